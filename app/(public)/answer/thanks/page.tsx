import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";

export const metadata = { title: "Thank you" };

export default function ThanksPage() {
  return (
    <Page title="Thank you">
      <Notice kind="done" title="Your answer is with the laboratory">
        It is kept with your name and the time. Nothing more is needed from you now.
      </Notice>
    </Page>
  );
}
