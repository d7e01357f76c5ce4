/** Nothing of ours runs in it, and nothing frames it. */
export const pageResponse = ({
  html,
  policy,
}: {
  readonly html: string;
  readonly policy: string;
}): Response =>
  new Response(html, {
    headers: {
      "cache-control": "private, no-store",
      "content-type": "text/html; charset=utf-8",
      "content-security-policy": `${policy}; frame-ancestors 'none'`,
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
    },
  });
