import { headers } from "next/headers";
import { Page } from "@/app/_ui/page";
import { packStatus } from "@/lib/domain/authenticity/even-length";
import { authenticityView } from "@/lib/views/authenticity";
import { clientOf } from "@/lib/web/client-of";
import { connectDatabase } from "@/lib/web/connect-database";
import { AuthenticityCheck } from "../authenticity-check.client";
import { Keep } from "../keep";
import { TooMany } from "../too-many";

export const metadata = {
  title: "Is this certificate genuine?",
  robots: "noindex, nofollow",
  referrer: "no-referrer",
};

type Props = { readonly params: Promise<{ readonly token: string }> };

export default async function AuthenticityOfOnePage({ params }: Props) {
  const { token } = await params;
  connectDatabase();
  const client = clientOf((await headers()).get("x-forwarded-for"));
  const asked = await authenticityView(token, client, new Date());
  if (asked.kind === "too-many") return <TooMany seconds={asked.resetsInSeconds} />;
  return (
    <Page
      title="Is this certificate genuine?"
      lead="Here is how it stands today. Drop the file below, and this page checks it whole: in your browser, with nothing sent to anybody."
    >
      <AuthenticityCheck said={packStatus(asked.status)} token={token} />
      <Keep />
    </Page>
  );
}
