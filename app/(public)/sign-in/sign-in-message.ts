type Message = { readonly kind: "danger" | "done" | "caution"; readonly text: string };

/** Words for the few codes this page knows; whatever else stands in the address is not repeated. */
export const signInMessage = (error: string | undefined, said: string | undefined): Message | null => {
  const wait = /^wait-(\d{1,3})$/.exec(error ?? "")?.[1];
  if (wait)
    return {
      kind: "caution",
      text: `Several sign-ins with this address failed. Wait ${wait} seconds, then try again.`,
    };
  if (error === "busy")
    return { kind: "caution", text: "Many people sign in at this moment. Try again in a few seconds." };
  if (error === "failed")
    return {
      kind: "danger",
      text: "Signing in failed on our side. Try again; if it fails again, tell the laboratory.",
    };
  if (error === "outside")
    return {
      kind: "danger",
      text: "The outside identity provider knows you, and no account here is linked with it. Sign in with your password, and link it under Your account.",
    };
  if (error !== undefined && /^(OAuth|Callback)/.test(error))
    return {
      kind: "danger",
      text: "What the outside identity provider answered could not be relied on, so nothing was opened. Try again, or sign in with your password.",
    };
  if (error !== undefined)
    return {
      kind: "danger",
      text: "The address and the password do not fit together. Type both again; capitals count in the password.",
    };
  if (said === "password-changed")
    return {
      kind: "done",
      text: "Your password is changed, and every session of yours is ended. Sign in with it.",
    };
  if (said === "signed-out") return { kind: "done", text: "You are signed out of this session." };
  if (said === "code-late")
    return {
      kind: "caution",
      text: "The code took longer than five minutes. Begin again with the password.",
    };
  if (said === "invited")
    return { kind: "done", text: "Your password is set. Sign in with your address and with it." };
  if (said === "reset")
    return {
      kind: "done",
      text: "Your password is changed, and every session of yours is ended. Sign in with it.",
    };
  if (said === "first-access")
    return { kind: "done", text: "The laboratory is recorded. Sign in with the password you just chose." };
  return null;
};
