const loopback = new Set(["localhost", "127.0.0.1", "[::1]"]);

/**
 * On the laboratory's own machine one server answers to several names, but cookies and the origin check know one.
 * Somebody who typed another loopback name is led to the configured one; any other host is left alone.
 */
export const ownLoopback = (host: string | null, publicUrl: URL, asked: URL): URL | null => {
  if (!host || !URL.canParse(`http://${host}`)) return null;
  const typed = new URL(`http://${host}`);
  const differs = typed.hostname !== publicUrl.hostname && typed.port === publicUrl.port;
  if (!differs || !loopback.has(typed.hostname) || !loopback.has(publicUrl.hostname)) return null;
  return new URL(asked.pathname + asked.search, publicUrl.origin);
};

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/**
 * A page that leads there by itself. Not a redirect: the framework takes all loopback names for one and would make its
 * address relative, which leads back to where it came from, for ever.
 */
export const pointingTo = (address: URL): Response => {
  const href = escaped(address.href);
  return new Response(
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>Emfolio</title><meta http-equiv="refresh" content="0; url=${href}"><p>Emfolio is at <a href="${href}">${escaped(address.origin)}</a>.</p></html>`,
    {
      headers: {
        "content-type": "text/html; charset=utf-8",
        "content-security-policy": "default-src 'none'; frame-ancestors 'none'",
        "cache-control": "no-store",
      },
    },
  );
};
