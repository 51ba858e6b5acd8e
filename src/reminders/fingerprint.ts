import { createHash } from 'node:crypto';
import type { Answer } from '../core/reply.ts';

/** Short for what an answer shows; equal for equal answers. */
export function fingerprint(answer: Answer): string {
  return createHash('sha256').update(JSON.stringify(answer)).digest('base64url').slice(0, 16);
}
