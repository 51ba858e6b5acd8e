import type { JsonObject } from '../wire/json.ts';
import { checkList, checkText } from './fields.ts';
import { LIMITS } from './limits.ts';
import { Problems } from './problems.ts';

/** The choices of an autocomplete answer. @throws ApiError 50035 */
export function checkChoices(data: JsonObject): readonly JsonObject[] {
  const problems = new Problems();
  const path = ['data', 'choices'];
  const choices = checkList(problems, path, data['choices'], {
    max: LIMITS.interaction.choices,
    required: true,
  });
  choices.forEach((choice, index) => {
    const at = [...path, index];
    checkText(problems, [...at, 'name'], choice['name'], {
      min: 1,
      max: LIMITS.command.choiceName,
      required: true,
    });
    if (typeof choice['value'] !== 'number') {
      checkText(problems, [...at, 'value'], choice['value'], {
        max: LIMITS.command.choiceText,
        required: true,
      });
    }
  });
  problems.settle();
  return choices;
}
