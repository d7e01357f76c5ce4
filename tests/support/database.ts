import { randomBytes } from "node:crypto";
import { inject } from "vitest";
import { changeUrl, connect } from "@/lib/commands/postgres/connect";
import { prepareDatabase } from "@/lib/commands/postgres/roles";
import type { Template } from "./template";

declare module "vitest" {
  interface ProvidedContext {
    template: Template;
  }
}

export type TestDatabase = {
  /** As the superuser, past every policy and privilege: to prepare and to look behind the product's back. */
  readonly adminUrl: string;
  /** As the product itself signs in. */
  readonly runtimeUrl: string;
  readonly drop: () => Promise<void>;
};

/** A fresh, migrated database of one's own, in some 60 ms. Evidence cannot be emptied, so each test file has one. */
export async function testDatabase(): Promise<TestDatabase> {
  return cloneTemplate(inject("template"));
}

export async function cloneTemplate(template: Template): Promise<TestDatabase> {
  const database = `test_${randomBytes(8).toString("hex")}`;
  await onServer(template, `CREATE DATABASE ${database} TEMPLATE ${template.name} OWNER emfolio_owner`);
  // Privileges on the database itself are not cloned with it.
  const inside = await connect(changeUrl(template.adminUrl, { database }));
  await prepareDatabase(inside).finally(() => inside.end());
  const { user, password } = template;
  return {
    adminUrl: changeUrl(template.adminUrl, { database }),
    runtimeUrl: changeUrl(template.adminUrl, { database, user, password }),
    drop: () => onServer(template, `DROP DATABASE IF EXISTS ${database} WITH (FORCE)`),
  };
}

async function onServer(template: Template, sql: string): Promise<void> {
  const client = await connect(template.adminUrl);
  await client.query(sql).finally(() => client.end());
}
