/** What survives a trip through JSON unchanged; a command's typed result is made of it. */
export type Json = string | number | boolean | null | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json | undefined;
}
