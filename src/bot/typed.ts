import { z } from 'zod';

/** One line of text, however it was pasted. */
export const line = (most: number) =>
  z
    .string()
    .min(1)
    .max(most)
    .transform((text) => text.replace(/\s+/g, ' ').trim())
    .refine((text) => text !== '', 'nothing was typed');

/** A field of a form; one left empty is one left out. */
export const blank = z
  .string()
  .optional()
  .transform((text) => (text?.trim() ? text.trim() : undefined));

/** A page of a long list, as its buttons say it. */
export const pageNumber = z.coerce.number().int().min(1).max(100_000).default(1);
