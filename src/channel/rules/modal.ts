import { isObject, type JsonObject } from '../wire/json.ts';
import { Part, SELECTS } from '../wire/numbers.ts';
import { checkIds, flatten } from './components.ts';
import { checkChoice, checkList, checkNumber, checkText } from './fields.ts';
import { LIMITS } from './limits.ts';
import { type Path, Problems } from './problems.ts';
import { checkSelect } from './selects.ts';

const { modal: MAX, component } = LIMITS;
const IN_LABEL: readonly number[] = [
  Part.textInput,
  ...SELECTS,
  Part.fileUpload,
  Part.radioGroup,
  Part.checkboxGroup,
  Part.checkbox,
];

/** The data of a form. @throws ApiError 50035 */
export function checkModal(data: JsonObject): void {
  const problems = new Problems();
  checkText(problems, ['data', 'custom_id'], data['custom_id'], {
    min: 1,
    max: component.customId,
    required: true,
  });
  checkText(problems, ['data', 'title'], data['title'], { min: 1, max: MAX.title, required: true });
  const path = ['data', 'components'];
  const parts = checkList(problems, path, data['components'], {
    min: 1,
    max: MAX.components,
    required: true,
  });
  parts.forEach((part, index) => {
    checkTop(problems, [...path, index], part);
  });
  checkIds(problems, flatten(parts, path));
  problems.settle();
}

function checkTop(problems: Problems, path: Path, part: JsonObject): void {
  const { type } = part;
  checkChoice(problems, [...path, 'type'], type, [Part.row, Part.text, Part.label], { required: true });
  if (type === Part.text) {
    checkText(problems, [...path, 'content'], part['content'], {
      min: 1,
      max: component.text,
      required: true,
    });
  } else if (type === Part.label) {
    checkText(problems, [...path, 'label'], part['label'], { min: 1, max: MAX.label, required: true });
    checkText(problems, [...path, 'description'], part['description'], { max: MAX.labelDescription });
    const child = part['component'];
    if (isObject(child)) checkField(problems, [...path, 'component'], child, IN_LABEL);
    else problems.add([...path, 'component'], 'BASE_TYPE_REQUIRED', 'This field is required');
  } else if (type === Part.row) {
    const at = [...path, 'components'];
    checkList(problems, at, part['components'], { min: 1, max: 1, required: true }).forEach(
      (child, index) => {
        checkField(problems, [...at, index], child, [Part.textInput]);
        checkText(problems, [...at, index, 'label'], child['label'], {
          min: 1,
          max: MAX.label,
          required: true,
        });
      },
    );
  }
}

function checkField(problems: Problems, path: Path, field: JsonObject, allowed: readonly number[]): void {
  const { type } = field;
  checkChoice(problems, [...path, 'type'], type, allowed, { required: true });
  if (typeof type !== 'number' || !allowed.includes(type)) return;
  if (SELECTS.includes(type)) {
    checkSelect(problems, path, field, true);
    return;
  }
  checkText(problems, [...path, 'custom_id'], field['custom_id'], {
    min: 1,
    max: component.customId,
    required: true,
  });
  if (type === Part.textInput) checkTextInput(problems, path, field, allowed.length > 1);
  if (type === Part.fileUpload) {
    checkNumber(problems, [...path, 'min_values'], field['min_values'], {
      min: 0,
      max: MAX.files,
      whole: true,
    });
    checkNumber(problems, [...path, 'max_values'], field['max_values'], {
      min: 1,
      max: MAX.files,
      whole: true,
    });
  }
  if (type === Part.radioGroup || type === Part.checkboxGroup) {
    const bounds = type === Part.radioGroup ? MAX.radioOptions : MAX.checkboxOptions;
    checkList(problems, [...path, 'options'], field['options'], { ...bounds, required: true }).forEach(
      (option, index) => {
        const text = { min: 1, max: component.selectText, required: true };
        checkText(problems, [...path, 'options', index, 'label'], option['label'], text);
        checkText(problems, [...path, 'options', index, 'value'], option['value'], text);
      },
    );
  }
}

function checkTextInput(problems: Problems, path: Path, input: JsonObject, inLabel: boolean): void {
  checkChoice(problems, [...path, 'style'], input['style'], [1, 2], { required: true });
  const least = checkNumber(problems, [...path, 'min_length'], input['min_length'], {
    min: 0,
    max: MAX.inputValue,
    whole: true,
  });
  const most = checkNumber(problems, [...path, 'max_length'], input['max_length'], {
    min: 1,
    max: MAX.inputValue,
    whole: true,
  });
  if ((least ?? 0) > (most ?? MAX.inputValue)) {
    problems.add(
      [...path, 'min_length'],
      'TEXT_INPUT_MIN_LENGTH_EXCEEDS_MAX',
      'min_length is greater than max_length',
    );
  }
  checkText(problems, [...path, 'value'], input['value'], { max: most ?? MAX.inputValue });
  checkText(problems, [...path, 'placeholder'], input['placeholder'], { max: MAX.inputPlaceholder });
  if (inLabel && input['label'] !== undefined && input['label'] !== null) {
    problems.add(
      [...path, 'label'],
      'TEXT_INPUT_LABEL_IN_LABEL',
      'A text input inside a label has no label of its own',
    );
  }
}
