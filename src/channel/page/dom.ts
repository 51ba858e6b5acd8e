/** The only maker of elements on this page. Text goes in as text nodes; nothing here ever parses markup. */

type Child = Node | string | undefined;
type Attributes = Readonly<Record<string, string | boolean | undefined>>;

/** An element with these attributes (`true` is an empty one, `false` and `undefined` leave it out) and children. */
export function make<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    element.setAttribute(name, value === true ? '' : value);
  }
  element.append(...children.filter((child) => child !== undefined));
  return element;
}

/** Something to press that says in words what happens. */
export function pressable(
  label: string,
  onPress: () => void,
  attributes: Attributes = {},
): HTMLButtonElement {
  const button = make('button', { type: 'button', class: 'press', ...attributes }, label);
  button.addEventListener('click', onPress);
  return button;
}

/** A person's name: cut off from its surroundings, so that one written right to left cannot reorder them. */
export function named(name: string): HTMLElement {
  return make('bdi', {}, name);
}

/** The element of this id, which `index.html` has. */
export function place(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (element === null) throw new Error(`index.html has no element "${id}"`);
  return element;
}
