type Child = Node | string;

/** One element with its text and children. Text is set as text: nothing that a file says becomes markup. */
export const element = (
  tag: string,
  attributes: Readonly<Record<string, string>>,
  ...children: readonly Child[]
): HTMLElement => {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...children);
  return made;
};
