import type { JsonObject } from '../wire/json.ts';
import { Part } from '../wire/numbers.ts';
import { checkBoolean, checkDistinct, checkList, checkNumber, checkText } from './fields.ts';
import { LIMITS } from './limits.ts';
import type { Path, Problems } from './problems.ts';

const { component: MAX } = LIMITS;

/** A select of a message or a form: its id, its options, how many may be chosen. */
export function checkSelect(problems: Problems, path: Path, select: JsonObject, inModal: boolean): void {
  checkText(problems, [...path, 'custom_id'], select['custom_id'], {
    min: 1,
    max: MAX.customId,
    required: true,
  });
  checkText(problems, [...path, 'placeholder'], select['placeholder'], { max: MAX.selectPlaceholder });
  const least = checkNumber(problems, [...path, 'min_values'], select['min_values'], {
    min: 0,
    max: MAX.selectOptions,
    whole: true,
  });
  const most = checkNumber(problems, [...path, 'max_values'], select['max_values'], {
    min: 1,
    max: MAX.selectOptions,
    whole: true,
  });
  if ((least ?? 1) > (most ?? Math.max(1, least ?? 1))) {
    problems.add(
      [...path, 'min_values'],
      'SELECT_COMPONENT_MIN_VALUES_EXCEEDS_MAX',
      'min_values is greater than max_values',
    );
  }
  checkBoolean(problems, [...path, 'disabled'], select['disabled']);
  if (inModal) {
    if (select['disabled'] === true) {
      problems.add(
        [...path, 'disabled'],
        'COMPONENT_DISABLED_IN_MODAL',
        'A component of a modal cannot be disabled',
      );
    }
    if (least === 0 && select['required'] !== false) {
      problems.add(
        [...path, 'min_values'],
        'SELECT_COMPONENT_REQUIRED_MIN_VALUES',
        'min_values may be 0 only when not required',
      );
    }
  }
  if (select['type'] === Part.stringSelect) checkOptions(problems, path, select, most);
}

function checkOptions(problems: Problems, path: Path, select: JsonObject, most: number | undefined): void {
  const at = [...path, 'options'];
  const options = checkList(problems, at, select['options'], {
    min: 1,
    max: MAX.selectOptions,
    required: true,
  });
  const bounds = { min: 1, max: MAX.selectText, required: true };
  options.forEach((option, index) => {
    checkText(problems, [...at, index, 'label'], option['label'], bounds);
    checkText(problems, [...at, index, 'value'], option['value'], bounds);
    checkText(problems, [...at, index, 'description'], option['description'], { max: MAX.selectText });
  });
  checkDistinct(
    problems,
    options.map((option, index) => ({ path: [...at, index, 'value'], value: String(option['value']) })),
    'SELECT_COMPONENT_OPTION_VALUE_DUPLICATED',
    'The specified option value is already used',
  );
  if (most !== undefined && most > options.length) {
    problems.add(
      [...path, 'max_values'],
      'SELECT_COMPONENT_MAX_VALUES_EXCEEDS_OPTIONS',
      `max_values is more than the ${options.length} options`,
    );
  }
}
