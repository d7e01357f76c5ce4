import type { TestProject } from "vitest/node";
import { ensureGenerated } from "@/lib/commands/generate";
import { borrowServer } from "@/lib/commands/postgres/borrow-server";
import { ensureTemplate } from "./template";

/** Before the tests that need a database: the client, a server, and the database they clone. */
export default async function startDatabase(project: TestProject): Promise<() => Promise<void>> {
  await ensureGenerated();
  const server = await borrowServer();
  try {
    project.provide("template", await ensureTemplate(server.urlOf("postgres"), server.fresh));
  } catch (error) {
    await server.giveBack();
    throw error;
  }
  return server.giveBack;
}
