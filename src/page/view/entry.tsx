import { useState } from 'preact/hooks';

interface EntryProps {
  readonly id?: string;
  readonly placeholder?: string;
  readonly 'aria-label'?: string;
  readonly 'aria-invalid'?: boolean;
  readonly 'aria-describedby'?: string | undefined;
  readonly value: string;
  readonly onEntered: (typed: string) => void;
}

/** A text field that counts when it is left: what is being typed stays, whatever is drawn anew meanwhile. */
export function Entry({ value, onEntered, ...named }: EntryProps) {
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <input
      {...named}
      type="text"
      autocomplete="off"
      value={typed ?? value}
      onInput={({ currentTarget }) => setTyped(currentTarget.value)}
      onChange={({ currentTarget }) => {
        if (currentTarget.value !== value) onEntered(currentTarget.value);
        setTyped(null);
      }}
    />
  );
}
