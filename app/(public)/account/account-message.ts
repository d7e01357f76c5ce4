const messages: Readonly<Record<string, string>> = {
  "session-ended": "That session has ended.",
  "others-ended": "Every other session of yours has ended.",
  "codes-ended": "One-time codes are given up: your password alone opens the account.",
  "codes-kept": "One-time codes are set up: each sign-in asks for one from now on.",
  linked: "Your account is linked: you can sign in by the outside identity provider as well.",
  "not-linked": "Nothing was linked: that person of the provider opens an account here already.",
  unlinked: "The link is gone: only your password opens the account.",
};

/** Words for the few codes this page knows. */
export const accountMessage = (said: string | undefined): string | null =>
  said !== undefined && Object.hasOwn(messages, said) ? (messages[said] ?? null) : null;
