import { TextField } from "@/app/_ui/text-field.client";

/** Twice, because nobody sees what they type; pasting and password managers are welcome. */
export function NewPasswordFields() {
  return (
    <>
      <TextField
        name="password"
        label="New password"
        type="password"
        autoComplete="new-password"
        hint="At least 12 characters; a few words in a row are good."
      />
      <TextField name="passwordAgain" label="The same again" type="password" autoComplete="new-password" />
    </>
  );
}
