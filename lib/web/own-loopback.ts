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
