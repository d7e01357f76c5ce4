import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";

export const metadata = { title: "Your answer" };

export default function AnsweredPage() {
  return (
    <Page title="Thank you">
      <Notice kind="done" title="Your answer is with the laboratory">
        It is kept with the offer you saw, your name and the time. You can close this page; the link opens
        nothing any more.
      </Notice>
    </Page>
  );
}
