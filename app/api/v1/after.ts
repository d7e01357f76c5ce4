/** Where a page begins, from the address; a number of ours or nothing. */
export const afterOf = (request: Request): string | null => {
  const after = new URL(request.url).searchParams.get("after");
  return after !== null && /^[A-Z]-[A-Z0-9-]{1,40}$/i.test(after) ? after : null;
};

export type NumberContext = { readonly params: Promise<{ readonly number: string }> };
