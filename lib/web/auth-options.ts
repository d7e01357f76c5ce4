import "server-only";
import type { AuthOptions } from "next-auth";
import Credentials from "next-auth/providers/credentials";
import { authorizeCode, authorizePassword, type SignedIn } from "./authorize";
import { env } from "./env";
import { admitOutside, outsideId, outsideProvider, sessionOutside } from "./outside-provider";
import { cookieNames, sessionSeconds } from "./session-cookie";

const cookieOptions = (isHttps: boolean) =>
  ({ httpOnly: true, sameSite: "lax", path: "/", secure: isHttps }) as const;

export const authOptions = (): AuthOptions => {
  const { secret, isHttps, publicOrigin } = env();
  const names = cookieNames(isHttps);
  const options = cookieOptions(isHttps);
  const outside = outsideProvider();
  return {
    secret,
    useSecureCookies: isHttps,
    session: { strategy: "jwt", maxAge: sessionSeconds },
    pages: { signIn: "/sign-in", signOut: "/sign-out", error: "/sign-in" },
    cookies: {
      sessionToken: { name: names.session, options },
      csrfToken: { name: names.csrf, options },
      callbackUrl: { name: names.target, options },
    },
    providers: [
      Credentials({
        credentials: {
          email: { type: "email" },
          password: { type: "password" },
          bench: { type: "checkbox" },
        },
        authorize: async (credentials) => authorizePassword(credentials) as never,
      }),
      Credentials({
        id: "code",
        credentials: { code: { type: "text" } },
        authorize: async (credentials) => authorizeCode(credentials) as never,
      }),
      ...(outside ? [outside] : []),
    ],
    callbacks: {
      signIn: ({ account, profile }) =>
        account?.provider === outsideId ? admitOutside(profile) : Promise.resolve(true),
      // Called with `user` at sign-in only; a token is never extended with anything from the browser.
      jwt: async ({ token, user, account, profile }) => {
        const signedIn =
          account?.provider === outsideId
            ? await sessionOutside(profile)
            : (user as unknown as SignedIn | undefined);
        return signedIn
          ? {
              personId: signedIn.id,
              sessionEpoch: signedIn.sessionEpoch,
              sessionId: signedIn.sessionId,
              signedInAt: Math.floor(Date.now() / 1000),
            }
          : token;
      },
      // The session address tells nothing; pages read the person from the database.
      session: ({ session }) => ({ expires: session.expires }),
      redirect: ({ url }) => ownAddress(url, publicOrigin),
    },
    logger: {
      error: (code, detail) => {
        // A wrong password is no fault of the server's.
        if (code !== "CALLBACK_CREDENTIALS_HANDLER_ERROR") console.error("next-auth", code, detail);
      },
      warn: () => {},
      debug: () => {},
    },
  };
};

/** Where to go after sign-in: an address of our own, or the first page; never somewhere else. */
export const ownAddress = (url: string, publicOrigin: string): string => {
  const resolved = URL.canParse(url, publicOrigin) ? new URL(url, publicOrigin) : null;
  return resolved?.origin === publicOrigin ? resolved.href : publicOrigin;
};
