import "server-only";
import { z } from "zod";
import { sealKeyOf } from "@/lib/data/seal";

const Env = z
  .object({
    /** The runtime role's address, never the owner's: it may not change what was recorded. */
    DATABASE_URL: z.string().min(1),
    NEXTAUTH_SECRET: z.string().min(32).optional(),
    AUTH_SECRET: z.string().min(32).optional(),
    /** Where people reach this laboratory, e.g. https://calibration.example or http://127.0.0.1:3000. */
    PUBLIC_URL: z.url({ protocol: /^https?$/ }),
    NODE_ENV: z.string().optional(),
    /** How many proxies of our own each request passes before it reaches us. */
    TRUSTED_PROXIES: z.coerce.number().int().min(0).max(9).default(0),
    /** An outside identity provider (OpenID Connect), by which linked people sign in; all three, or none. */
    OIDC_ISSUER: z.url({ protocol: /^https?$/ }).optional(),
    OIDC_CLIENT_ID: z.string().min(1).optional(),
    OIDC_CLIENT_SECRET: z.string().min(1).optional(),
    /** Where its sign-in page is, when that is another host than the issuer's. */
    OIDC_SIGN_IN_ORIGIN: z.url({ protocol: /^https?$/ }).optional(),
    /** Folder of the published schemas of digital certificates; without it only our own rules are applied. */
    DCC_SCHEMA_DIR: z.string().min(1).optional(),
  })
  .transform((value, context) => {
    const secret = value.NEXTAUTH_SECRET ?? value.AUTH_SECRET;
    if (!secret) {
      context.addIssue({ code: "custom", message: "NEXTAUTH_SECRET (32 characters or more) is not set" });
      return z.NEVER;
    }
    const { OIDC_ISSUER: issuer, OIDC_CLIENT_ID: clientId, OIDC_CLIENT_SECRET: clientSecret } = value;
    if ([issuer, clientId, clientSecret].some(Boolean) && !(issuer && clientId && clientSecret))
      context.addIssue({
        code: "custom",
        message: "OIDC_ISSUER, OIDC_CLIENT_ID and OIDC_CLIENT_SECRET are set together, or not at all",
      });
    return {
      outside:
        issuer && clientId && clientSecret
          ? {
              ...{ issuer, clientId, clientSecret },
              origin: new URL(value.OIDC_SIGN_IN_ORIGIN ?? issuer).origin,
            }
          : null,
      databaseUrl: value.DATABASE_URL,
      secret,
      /** Opens what lies sealed in the database. */
      sealKey: sealKeyOf(secret),
      publicOrigin: new URL(value.PUBLIC_URL).origin,
      isHttps: new URL(value.PUBLIC_URL).protocol === "https:",
      trustedProxies: value.TRUSTED_PROXIES,
      dccSchemaFolder: value.DCC_SCHEMA_DIR ?? null,
      isDevelopment: value.NODE_ENV === "development",
    };
  });

export type WebEnv = z.output<typeof Env>;

let known: WebEnv | undefined;

/** The only place of the web side that reads the environment; lazily, because a build has none. */
export const env = (): WebEnv => {
  if (known) return known;
  const parsed = Env.safeParse(process.env);
  if (!parsed.success)
    throw new Error(
      `The web server cannot start: ${parsed.error.issues.map((issue) => `${issue.path.join(".")} ${issue.message}`).join("; ")}`,
    );
  known = parsed.data;
  // next-auth reads its own address from here only, and loops when it is unset.
  process.env.NEXTAUTH_URL = known.publicOrigin;
  return known;
};
