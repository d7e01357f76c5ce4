/** 32 random bytes, base64url: never a number that could be counted through. */
export const isToken = (text: string): boolean => /^[A-Za-z0-9_-]{43}$/.test(text);

/** Of the address that a document carries: where it can be asked after, and as what. undefined where it is none. */
export const readAddress = (
  address: string,
): { readonly host: string; readonly token: string } | undefined => {
  if (!URL.canParse(address)) return undefined;
  const { protocol, host, pathname } = new URL(address);
  const token = /^\/authenticity\/([^/]+)$/.exec(pathname)?.[1];
  if (!/^https?:$/.test(protocol) || token === undefined || !isToken(token)) return undefined;
  return { host, token };
};
