import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { webhookTopicLabels } from "@/lib/domain/machine/topics";
import type { ProgramWebhook } from "@/lib/views/machine/programs";
import { endWebhookAction, makeWebhookAction, testWebhookAction } from "./actions";

const columns = [
  { key: "url", header: "Address" },
  { key: "hears", header: "Hears of" },
  { key: "last", header: "Last messages" },
  { key: "act", header: "Try or end it" },
];

const outcomeWords: Readonly<Record<string, string>> = {
  delivered: "taken",
  failed: "not taken, tried again later",
  "given-up": "not taken, given up",
};

function LastMessages({ attempts }: { readonly attempts: ProgramWebhook["attempts"] }) {
  if (attempts.length === 0) return <>none yet</>;
  return (
    <ul>
      {attempts.map((attempt) => (
        <li key={attempt.at}>
          <Timestamp at={attempt.at} />: {attempt.about}, {outcomeWords[attempt.outcome]} ({attempt.detail})
        </li>
      ))}
    </ul>
  );
}

export function WebhookTable({ webhooks }: { readonly webhooks: readonly ProgramWebhook[] }) {
  return (
    <DataTable
      caption="Addresses that are told"
      captionUnseen
      columns={columns}
      rows={webhooks.map((webhook) => ({
        key: webhook.id,
        cells: {
          url: <code>{webhook.url}</code>,
          hears: webhook.hears.join("; "),
          last: <LastMessages attempts={webhook.attempts} />,
          act: (
            <>
              <ActionForm action={testWebhookAction} label={`Send a test message to ${webhook.url}`}>
                <input type="hidden" name="id" value={webhook.id} />
                <SubmitButton kind="quiet">Send a test message</SubmitButton>
              </ActionForm>
              <ActionForm action={endWebhookAction} label={`End ${webhook.url}`}>
                <input type="hidden" name="id" value={webhook.id} />
                <SubmitButton kind="quiet">End it</SubmitButton>
              </ActionForm>
            </>
          ),
        },
      }))}
      empty={
        <EmptyState title="Nobody is told">
          A message says what happened and to which order or certificate, and never a result; your program
          then asks for the rest with its token.
        </EmptyState>
      }
    />
  );
}

export function NewWebhook() {
  return (
    <ActionForm action={makeWebhookAction} label="Be told at an address">
      <TextField
        name="url"
        label="Address"
        hint="It has to answer on the internet. Messages are signed by the open specification Standard Webhooks."
      />
      <FieldGroup legend="Of what">
        {Object.entries(webhookTopicLabels).map(([topic, label]) => (
          <CheckboxField key={topic} name="topics" value={topic} label={label} />
        ))}
        <FieldError name="topics" />
      </FieldGroup>
      <div className="form-actions">
        <SubmitButton>Set it up</SubmitButton>
      </div>
    </ActionForm>
  );
}
