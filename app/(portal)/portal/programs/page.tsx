import { Page } from "@/app/_ui/page";
import { NewToken, TokenTable } from "@/app/_ui/program-tokens";
import { Section } from "@/app/_ui/section";
import { tokenScopes } from "@/lib/domain/machine/scopes";
import { customerProgramsView } from "@/lib/views/machine/programs";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { makeTokenAction, revokeTokenAction } from "./actions";
import { NewWebhook, WebhookTable } from "./webhooks";

export const metadata = { title: "Programs" };

export default async function ProgramsPage() {
  const actor = await requirePermission("portal.manage");
  const { tokens, webhooks } = await load(customerProgramsView(actor, new Date()));
  return (
    <Page
      title="Programs"
      lead={
        <>
          Let a program of yours read orders and certificates, request work, or be told what happens. What
          there is to ask is described in <a href="/api/v1/openapi.json">the interface’s OpenAPI document</a>.
        </>
      }
    >
      <Section title="Tokens">
        <TokenTable tokens={tokens} revoke={revokeTokenAction} />
      </Section>
      <Section title="Make a token">
        <NewToken make={makeTokenAction} scopes={tokenScopes} />
      </Section>
      <Section title="Told as it happens">
        <WebhookTable webhooks={webhooks} />
      </Section>
      <Section title="Be told at an address">
        <NewWebhook />
      </Section>
    </Page>
  );
}
