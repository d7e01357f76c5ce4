import "server-only";
import { configureDatabase } from "@/lib/data/client";
import { configurePublicUrl } from "@/lib/data/public-url";
import { configureSeal } from "@/lib/data/seal";
import { env } from "./env";

/** Before the first question or operation of a request; costs nothing the second time. */
export const connectDatabase = (): void => {
  configureDatabase(env().databaseUrl);
  configurePublicUrl(env().publicOrigin);
  configureSeal(env().sealKey);
};
