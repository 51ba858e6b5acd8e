import type { SumSheet } from '../../core/calculation.ts';

export const fuellingFitSheet: SumSheet = {
  title: 'Multipliers of a fuel table from a logged drive',
  formula: 'λ(t) = Σ x_c(t)·m_c·λ_t/c_l + f·F(t), all m_c at once by robust least squares',
  symbols: {
    'λ(t)': 'measured λ',
    'x_c(t)':
      'share of cell c in the table’s own bilinear interpolation, where the engine was when the gas left it',
    m_c: 'multiplier of cell c',
    λ_t: 'λ wanted there',
    c_l: 'fuel the closed loop added, as a factor',
    'F(t)': 'change of load of late, fading: what the film of fuel on the walls answers to',
    f: 'share of the film, fitted along',
  },
  sources: ['HUBER', 'TUKEY', 'COMMON'],
  range:
    'a warm engine, steady to slowly moving running, λ 0.6 to 1.5; weak ties of neighbours (9 %) only fill where readings are few',
};

export const fuellingUncertaintySheet: SumSheet = {
  title: 'Uncertainty of a multiplier',
  formula: 'U = 2.1·√(s²·(A⁻¹)_cc·n + 0.003² + (0.03·r)² + (0.5·w)²), n = 1 + 2·Σρ_k',
  symbols: {
    U: 'the true multiplier lies within it 19 times out of 20',
    s: 'robust standard deviation of a reading around the cell',
    A: 'matrix of the fit',
    n: 'readings in a row that say the same thing once, from the autocorrelation ρ_k of what is left',
    r: 'how unlike its neighbours the cell is',
    w: 'what the film has moved its readings by',
  },
  sources: ['PRIESTLEY', 'HUBER'],
  range:
    'held against model engines of known errors, more than 19 cells in 20; a cell beyond ±3 % is left alone',
};

export const exhaustDelaySheet: SumSheet = {
  title: 'Delay of the λ sensor',
  formula: 'τ = τ_0 + τ_1/φ, then a lag of first order T by two points of Laguerre’s rule',
  symbols: {
    φ: 'flow as a multiple of that at 1000 rpm and 40 kPa',
    'τ_0, τ_1': 'from the steps in the log, else 0.06 s and 0.22 s',
    T: 'lag of the sensor, from the log, else 0.08 s',
  },
  sources: ['ABRAMOWITZ', 'COMMON'],
  range:
    'found from a log in which the mixture moves for 6 s or more in all; the usual figures are said to be so',
};
