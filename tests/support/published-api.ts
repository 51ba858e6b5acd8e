/**
 * Checks requests and answers against the platform's published API description (OpenAPI 3.1, MIT licensed), which lies
 * beside the project in `../shared/platform/openapi.json` or where `CHARGEHAND_API_DESCRIPTION` says. Without the file
 * the check is left out, and says so.
 */
import { existsSync, readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type JsonObject = { [key: string]: Json };

const isObject = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const FILE =
  process.env['CHARGEHAND_API_DESCRIPTION'] ??
  new URL('../../../shared/platform/openapi.json', import.meta.url).pathname;

export interface Exchange {
  readonly method: string;
  /** After `/api/v10`. */
  readonly path: string;
  readonly status: number;
  readonly request: unknown;
  readonly response: unknown;
}

export interface PublishedApi {
  /** What is wrong with this exchange, one line each; empty when nothing is. */
  problemsOf(exchange: Exchange): readonly string[];
}

/** The description as a checker, or undefined, said out loud, when the file is not there. */
export function publishedApi(): PublishedApi | undefined {
  if (!existsSync(FILE)) {
    console.log(
      'LEFT OUT: the check against the published API description; ../shared/platform/openapi.json is not there.',
    );
    return undefined;
  }
  const document = JSON.parse(readFileSync(FILE, 'utf8')) as JsonObject;
  repair(document);
  const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: true });
  addFormats.default(ajv, ['uri', 'date-time']);
  ajv.addFormat('int32', { type: 'number', validate: (value: number) => Number.isInteger(value) });
  ajv.addFormat('int64', true);
  ajv.addFormat('double', true);
  ajv.addFormat('snowflake', /^\d{1,20}$/);
  ajv.addFormat('nonce', true);
  ajv.addSchema(document, 'api.json');
  const compiled = new Map<string, ValidateFunction>();
  /** Each schema is compiled when first needed; all of them together take a second. */
  const validator: Validator = (steps) => {
    if (at(document, ...steps) === undefined) return undefined;
    const $ref = pointer(...steps);
    const validate = compiled.get($ref) ?? ajv.compile({ $ref });
    compiled.set($ref, validate);
    return validate;
  };
  return { problemsOf: (exchange) => check(validator, document, exchange) };
}

/** The schema at these keys of the document, if there is one. */
type Validator = (steps: readonly string[]) => ValidateFunction | undefined;

/** What has to be put right before a validator takes the document. */
function repair(node: Json): void {
  if (Array.isArray(node)) {
    for (const one of node) repair(one);
    return;
  }
  if (!isObject(node)) return;
  // 1. One schema (a join request) has an enum without values, which no validator compiles.
  if (Array.isArray(node['enum']) && node['enum'].length === 0) delete node['enum'];
  const { properties } = node;
  if (isObject(properties)) {
    // 2. Permission sets are described as integers; documentation and client send strings of digits.
    for (const key of ['default_member_permissions', 'permissions', 'allow', 'deny']) {
      const schema = properties[key];
      if (isObject(schema) && JSON.stringify(schema['type'] ?? '').includes('integer')) {
        properties[key] = { anyOf: [schema, { type: 'string', pattern: '^\\d+$' }] };
      }
    }
  }
  // 3. Unions told apart by `type`: with if/then a validator reports the one branch that was meant.
  const branches = node['oneOf'] ?? node['anyOf'];
  if (isObject(node['discriminator']) && Array.isArray(branches)) delete node['discriminator'];
  for (const value of Object.values(node)) repair(value);
}

const pointer = (...steps: readonly string[]): string =>
  `api.json#/${steps.map((step) => encodeURIComponent(step.replace(/~/g, '~0').replace(/\//g, '~1'))).join('/')}`;

/** The described path this one is an instance of; one with fewer parameters first (`@original` before an id). */
function described(document: JsonObject, path: string): string | undefined {
  const paths = isObject(document['paths']) ? Object.keys(document['paths']) : [];
  const bare = decodeURIComponent(path.split('?')[0] ?? '');
  return paths
    .toSorted((a, b) => a.split('{').length - b.split('{').length)
    .find((pattern) => {
      const source = pattern.split(/\{[^}]+\}/).map((text) => RegExp.escape(text));
      return new RegExp(`^${source.join('[^/]+')}$`).test(bare);
    });
}

function at(node: Json | undefined, ...keys: readonly string[]): Json | undefined {
  return keys.reduce<Json | undefined>((so, key) => (isObject(so) ? so[key] : undefined), node);
}

function check(validator: Validator, document: JsonObject, exchange: Exchange): readonly string[] {
  const method = exchange.method.toLowerCase();
  const path = described(document, exchange.path);
  const operation = path === undefined ? undefined : at(document, 'paths', path, method);
  if (path === undefined || operation === undefined)
    return [`${exchange.method} ${exchange.path}: not described`];
  const where = `${exchange.method} ${path}`;
  const problems: string[] = [];
  const take = (what: string, steps: readonly string[], value: unknown) => {
    const validate = validator(steps);
    if (validate === undefined || validate(value)) return;
    for (const error of validate.errors ?? []) {
      problems.push(`${where} ${what} ${error.instancePath} ${error.message ?? ''}`);
    }
  };
  if (exchange.status < 400 && exchange.request !== undefined) {
    take(
      'request',
      ['paths', path, method, 'requestBody', 'content', 'application/json', 'schema'],
      exchange.request,
    );
  }
  if (exchange.status === 204) return problems;
  const statuses = at(operation, 'responses');
  const exact = String(exchange.status);
  const status = isObject(statuses) && exact in statuses ? exact : `${exact.charAt(0)}XX`;
  const component = at(statuses, status, '$ref');
  const base =
    typeof component === 'string'
      ? component.replace('#/', '').split('/')
      : ['paths', path, method, 'responses', status];
  take('answer', [...base, 'content', 'application/json', 'schema'], exchange.response);
  return problems;
}
