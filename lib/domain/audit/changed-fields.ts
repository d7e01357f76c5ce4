/** Names of the fields whose value differs; a form sends them all, the audit log names those that changed. */
export const changedFields = <T extends Readonly<Record<string, unknown>>>(
  before: T,
  after: { readonly [K in keyof T]?: T[K] },
): string[] => Object.keys(after).filter((name) => before[name] !== after[name]);
