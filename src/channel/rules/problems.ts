import { type ApiError, refuse } from '../wire/api-error.ts';
import type { JsonObject } from '../wire/json.ts';

export type Path = readonly (string | number)[];

interface Branch {
  [key: string]: Branch | { code: string; message: string }[];
}

/**
 * What is wrong with one request, gathered in the platform's nested form:
 * `errors.embeds["0"].title._errors[{code, message}]`.
 */
export class Problems {
  readonly #tree: Branch = {};
  #count = 0;

  add(path: Path, code: string, message: string): void {
    let at = this.#tree;
    for (const step of path) {
      const next = at[step];
      const branch: Branch = next === undefined || Array.isArray(next) ? {} : next;
      at[step] = branch;
      at = branch;
    }
    const list = at['_errors'];
    if (Array.isArray(list)) list.push({ code, message });
    else at['_errors'] = [{ code, message }];
    this.#count += 1;
  }

  get any(): boolean {
    return this.#count > 0;
  }

  error(): ApiError {
    // A Branch is JSON: it holds nothing but objects, lists and strings.
    return refuse.form(this.#tree as JsonObject);
  }

  /** @throws ApiError 50035 when anything was added. */
  settle(): void {
    if (this.any) throw this.error();
  }
}
