import { make, named, pressable } from './dom.ts';

const MEGABYTE = 1024 * 1024;

/** The files that go with the next line. */
export interface Files {
  readonly element: HTMLElement;
  /** Opens the machine's own way of choosing files. */
  choose(): void;
  add(files: Iterable<File>): void;
  /** Hands them over and keeps none. */
  take(): readonly File[];
}

/** Files over `limitBytes` are refused with a sentence to `complain`. */
export function chosenFiles(limitBytes: () => number, complain: (sentence: string) => void): Files {
  let files: readonly File[] = [];
  const list = make('ul', { class: 'files', 'aria-label': 'Attached', hidden: true });
  const input = make('input', {
    type: 'file',
    multiple: true,
    hidden: true,
    'aria-label': 'Files to attach',
  });
  const element = make('div', {}, list, input);

  const draw = (): void => {
    list.hidden = files.length === 0;
    list.replaceChildren(
      ...files.map((file) => {
        const off = pressable('Take off', () => set(files.filter((other) => other !== file)), {
          'aria-label': `Take off ${file.name}`,
        });
        return make('li', {}, named(file.name), make('span', { class: 'note' }, sizeOf(file)), off);
      }),
    );
  };
  const set = (next: readonly File[]): void => {
    files = next;
    draw();
  };
  const add = (more: Iterable<File>): void => {
    const offered = [...more];
    const tooLarge = offered.find((file) => file.size > limitBytes());
    if (tooLarge !== undefined) {
      const limit = Math.floor(limitBytes() / MEGABYTE);
      complain(
        `${tooLarge.name} is ${sizeOf(tooLarge)} and was not attached. The channel takes up to ${limit} MB.`,
      );
    }
    set([...files, ...offered.filter((file) => file.size <= limitBytes())]);
  };
  input.addEventListener('change', () => {
    add(input.files ?? []);
    input.value = '';
  });

  return {
    element,
    add,
    choose: () => input.click(),
    take() {
      const taken = files;
      set([]);
      return taken;
    },
  };
}

function sizeOf(file: File): string {
  return file.size < MEGABYTE / 10
    ? `${Math.ceil(file.size / 1024)} kB`
    : `${(file.size / MEGABYTE).toFixed(1)} MB`;
}
