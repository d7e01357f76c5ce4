import { ok, type Result, refuse } from "../refusal";

/** By which components somebody signs. */
export type SigningMeans = "password+code" | "password" | "code";

type Given = {
  /** Whether an earlier signature of this session is recent enough. */
  readonly isContinued: boolean;
  readonly hasPassword: boolean;
  readonly hasCode: boolean;
};

const notYet = "Nothing was signed yet; what you ticked is still here.";

/** 21 CFR 11.200(a)(1): the first signature of a session needs both components, each later one at least one. */
export const decideMeans = ({ isContinued, hasPassword, hasCode }: Given): Result<SigningMeans> => {
  if (hasPassword && hasCode) return ok("password+code");
  if (isContinued && hasPassword) return ok("password");
  if (isContinued && hasCode) return ok("code");
  if (isContinued)
    return refuse("invalid", notYet, { password: "Type your password, or a one-time code below." });
  const first = "The first signature of a session needs both.";
  return refuse("invalid", notYet, {
    ...(hasPassword ? {} : { password: `Type your password. ${first}` }),
    ...(hasCode ? {} : { secretCode: `Type the code your authenticator shows now. ${first}` }),
  });
};
