/**
 * The first visit of a browser goes by another address, for the cookie of the form, and comes back with nothing but the
 * way that was asked for. What the page was to say travels in it.
 */
export const wayThere = (to: string, said: string | undefined): string =>
  said === undefined ? to : `/sign-in?${new URLSearchParams({ said, to })}`;

type Way = { readonly to: string | undefined; readonly said: string | undefined };

export const wayBack = (way: string | undefined, publicOrigin: string): Way => {
  const url = way !== undefined && URL.canParse(way, publicOrigin) ? new URL(way, publicOrigin) : null;
  if (url?.origin !== publicOrigin || url.pathname !== "/sign-in") return { to: way, said: undefined };
  return { to: url.searchParams.get("to") ?? "/", said: url.searchParams.get("said") ?? undefined };
};
