/** Keys that do something here: `<KeyHint keys={["Alt", "S"]} />`. */
export function KeyHint({ keys }: { readonly keys: readonly string[] }) {
  return (
    <span>
      {keys.map((key, index) => (
        <span key={key}>
          {index > 0 ? " " : null}
          <kbd>{key}</kbd>
        </span>
      ))}
    </span>
  );
}
