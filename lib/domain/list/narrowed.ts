/** Which tab and which page: all else that an address says leaves something out. */
const always: readonly string[] = ["show", "after", "before"];

/** A word or a filter is set: how many there are of each state is then not how many would be shown. */
export const isNarrowed = (query: Readonly<Record<string, string | undefined>>): boolean =>
  Object.entries(query).some(([name, value]) => Boolean(value) && !always.includes(name));
