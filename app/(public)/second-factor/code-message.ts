/** Words for the few codes that the second step knows. */
export const codeMessage = (error: string | undefined): string | null => {
  const wait = /^code-wait-(\d{1,3})$/.exec(error ?? "")?.[1];
  if (wait) return `Several codes were wrong. Wait ${wait} seconds, then type the one that is shown then.`;
  if (error === undefined) return null;
  return "This code does not fit, or was used already: each opens once. Type the next one that the authenticator shows.";
};
