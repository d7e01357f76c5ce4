import { randomBytes } from "node:crypto";
import { changeUrl, connect } from "@/lib/commands/postgres/connect";
import { prepareDatabase } from "@/lib/commands/postgres/roles";
import type { Template } from "./template";

export type TestDatabase = {
  /** As the superuser, past every policy and privilege: to prepare and to look behind the product's back. */
  readonly adminUrl: string;
  /** As the product itself signs in. */
  readonly runtimeUrl: string;
  /** As the worker takes its jobs. */
  readonly jobsUrl: string;
  readonly drop: () => Promise<void>;
};

export async function cloneTemplate(template: Template): Promise<TestDatabase> {
  const database = `test_${randomBytes(8).toString("hex")}`;
  await onServer(template, `CREATE DATABASE ${database} TEMPLATE ${template.name} OWNER emfolio_owner`);
  // Privileges on the database itself are not cloned with it.
  const inside = await connect(changeUrl(template.adminUrl, { database }));
  await prepareDatabase(inside).finally(() => inside.end());
  const { user, jobsUser, password } = template;
  return {
    adminUrl: changeUrl(template.adminUrl, { database }),
    runtimeUrl: changeUrl(template.adminUrl, { database, user, password }),
    jobsUrl: changeUrl(template.adminUrl, { database, user: jobsUser, password }),
    drop: () => onServer(template, `DROP DATABASE IF EXISTS ${database} WITH (FORCE)`),
  };
}

async function onServer(template: Template, sql: string): Promise<void> {
  const client = await connect(template.adminUrl);
  await client.query(sql).finally(() => client.end());
}
