/**
 * The Message-ID (RFC 5322, 3.6.4) of a message: its own id at the host that people reach the platform at. It is the
 * same at each attempt, so that a message that is delivered twice is shown once.
 */
export const messageIdOf = (id: string, publicUrl: string): string =>
  `<${id}@${new URL(publicUrl).hostname}>`;
