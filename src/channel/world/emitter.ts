/** A list of listeners; each gets what is told after it came, in order. */
export class Emitter<T> {
  readonly #listeners = new Set<(one: T) => void>();

  /** @returns what takes the listener off again. */
  listen(listener: (one: T) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  tell(one: T): void {
    for (const listener of [...this.#listeners]) listener(one);
  }
}
