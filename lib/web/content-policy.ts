type Policy = {
  readonly nonce: string;
  readonly isHttps: boolean;
  /** Only `next dev`: its overlay evaluates text and talks over a socket. */
  readonly isDevelopment: boolean;
  /** Where a form may lead to beside ourselves: the outside identity provider's sign-in page. */
  readonly outsideOrigin?: string | undefined;
};

/** 128 bits and more, new for each request. */
export const freshNonce = (): string =>
  btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(24))));

export const contentPolicy = ({ nonce, isHttps, isDevelopment, outsideOrigin }: Policy): string =>
  [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${isDevelopment ? " 'unsafe-eval'" : ""}`,
    isDevelopment ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    // Positions in drawings are style attributes; no stylesheet can be put in by one.
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${isDevelopment ? " ws: wss:" : ""}`,
    "worker-src 'self' blob:",
    "frame-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    `form-action 'self'${outsideOrigin ? ` ${outsideOrigin}` : ""}`,
    "frame-ancestors 'none'",
    ...(isHttps ? ["upgrade-insecure-requests"] : []),
  ].join("; ");
