/** Cookie names. `__Host-` binds a cookie to this host, to https and to the whole path; plain http cannot carry it. */
export const cookieNames = (isHttps: boolean) => {
  const prefix = isHttps ? "__Host-" : "";
  return {
    session: `${prefix}emfolio.session`,
    csrf: `${prefix}emfolio.csrf`,
    target: `${prefix}emfolio.target`,
    /** That the password was right; the one-time code is still to come. */
    step: `${prefix}emfolio.step`,
    /** Shown once after they were made. */
    recovery: `${prefix}emfolio.recovery`,
    /** Who asked to be linked with the outside identity provider. */
    link: `${prefix}emfolio.link`,
  } as const;
};

/** A working day; after it a person signs in again, however busy the session was. */
export const sessionSeconds = 12 * 60 * 60;
