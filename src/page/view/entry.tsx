import type { InputHTMLAttributes } from 'preact';
import { useState } from 'preact/hooks';

interface EntryProps extends Omit<InputHTMLAttributes<HTMLInputElement>, 'value' | 'onChange' | 'onInput'> {
  readonly value: string;
  readonly onEntered: (typed: string) => void;
}

/** A text field that counts when it is left: what is being typed stays, whatever is drawn anew meanwhile. */
export function Entry({ value, onEntered, ...more }: EntryProps) {
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <input
      {...more} type="text" autocomplete="off" value={typed ?? value}
      onInput={({ currentTarget }) => setTyped(currentTarget.value)}
      onChange={({ currentTarget }) => {
        if (currentTarget.value !== value) onEntered(currentTarget.value);
        setTyped(null);
      }}
    />
  );
}
