import { connection } from "next/server";
import { isHealthyView } from "@/lib/views/health";
import { connectDatabase } from "@/lib/web/connect-database";

/** For whoever watches the process: the web answers, and the database answers it. */
export const GET = async (): Promise<Response> => {
  await connection();
  try {
    connectDatabase();
    await isHealthyView();
    return Response.json({ status: "ok" }, { headers: { "Cache-Control": "no-store" } });
  } catch (error) {
    console.error("health", error);
    return Response.json({ status: "database does not answer" }, { status: 503 });
  }
};
