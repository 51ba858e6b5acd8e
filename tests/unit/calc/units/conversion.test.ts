import { describe, expect, it } from 'vitest';
import { convertFigure } from '../../../../src/calc/units/conversion.ts';
import { convert, differenceToBase, toBase } from '../../../../src/calc/units/convert.ts';
import { massFlow, volumeFlow } from '../../../../src/calc/units/density.ts';
import { isUnitId } from '../../../../src/calc/units/table.ts';
import { usualUnits } from '../../../../src/calc/units/usual.ts';
import { UserError } from '../../../../src/core/user-error.ts';

function refusal(run: () => unknown): UserError {
  try {
    run();
  } catch (error) {
    if (error instanceof UserError) return error;
    throw error;
  }
  throw new Error('it was not refused');
}

describe('converting', () => {
  it('refuses units of two dimensions', () => {
    const said = 'psi is a pressure and N·m is a torque: the one does not become the other.';
    expect(refusal(() => convert(1, 'psi', 'N.m'))).toMatchObject({ code: 'bad-input', message: said });
    expect(refusal(() => convertFigure(1, { from: 'psi', to: 'N.m' })).message).toBe(said);
  });

  it('leaves a figure in its own unit untouched', () =>
    expect(convert(0.1 + 0.2, 'psi', 'psi')).toBe(0.1 + 0.2));

  it('refuses a wire gauge there is none of', () => {
    expect(refusal(() => toBase(60, 'AWG')).code).toBe('out-of-range');
  });

  it('says an area as the gauge it is nearest to', () => {
    expect(convert(5.261154954510373, 'mm2', 'AWG')).toBeCloseTo(10, 9);
  });

  it('takes a tolerance of threads per inch where it is', () => {
    expect(differenceToBase(1, 'tpi', 20)).toBeCloseTo((25.4 / 19 - 25.4 / 21) / 2, 12);
  });

  it('wants to know what a pressure is measured from before it moves its zero', () => {
    const error = refusal(() => convertFigure(1, { from: 'bar', to: 'kPa', wantedReference: 'absolute' }));
    expect(error.message).toContain('gauge, or boost');
  });

  it('turns absolute into a depth of vacuum', () => {
    const { value } = convertFigure(40, {
      from: 'kPa',
      to: 'kPa',
      reference: 'absolute',
      wantedReference: 'vacuum',
    });
    expect(value.figure).toBeCloseTo(61.325, 9);
  });
});

describe('a flow through the density', () => {
  it('is 10.5 cc/min to the lb/h at the density of the trade', () => {
    expect(convertFigure(1, { from: 'lb/h', to: 'cc/min' }).value.figure).toBeCloseTo(10.5, 3);
  });
  it('comes back', () => {
    const flowed = volumeFlow({ massFlowGramPerS: 5, densityGramPerCc: 0.745 }).value.flowCcPerMin;
    const back = massFlow({ flowCcPerMin: flowed, densityGramPerCc: 0.745 }).value.massFlowGramPerS;
    expect(back).toBeCloseTo(5, 12);
  });
  it('is refused for a density no liquid has', () => {
    expect(refusal(() => massFlow({ flowCcPerMin: 1, densityGramPerCc: 0.001 })).message).toContain(
      '0.4 to 2 g/cm³',
    );
  });
});

describe('the usual units', () => {
  it('go by the size', () => {
    expect(usualUnits('length', 0.05)).toContain('thou');
    expect(usualUnits('length', 5e6)).toEqual(['km', 'mi']);
    expect(usualUnits('pressure', -60)).toContain('inHg');
  });
});

it('a name is a unit only if the table has it', () => {
  expect(isUnitId('psi')).toBe(true);
  expect(isUnitId('constructor')).toBe(false);
});
