import { Page } from "@/app/_ui/page";
import { AuthenticityCheck } from "./authenticity-check.client";
import { Keep } from "./keep";

export const metadata = {
  title: "Is this certificate genuine?",
  robots: "noindex, nofollow",
  referrer: "no-referrer",
};

export default function AuthenticityPage() {
  return (
    <Page
      title="Is this certificate genuine?"
      lead="Drop a certificate of this laboratory, and this page checks it: in your browser, with the file sent to nobody. To see how a certificate stands without the file, open the address in the code on its pages."
    >
      <AuthenticityCheck said={null} token={null} />
      <Keep />
    </Page>
  );
}
