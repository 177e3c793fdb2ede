import { useRef } from 'preact/hooks';

interface PaperProps {
  readonly html: string;
  /** What the page is called. */
  readonly title: string;
  /** What the button says. */
  readonly print: string;
  /** What is on it. */
  readonly about: string;
}

/** A page of the engine's for paper, in a frame of its own that runs nothing, and the button that prints it. */
export function Paper({ html, title, print, about }: PaperProps) {
  const frame = useRef<HTMLIFrameElement>(null);
  const printIt = (): void => {
    frame.current?.contentWindow?.focus();
    frame.current?.contentWindow?.print();
  };
  return (
    <div class="sheet-view">
      <p>{about}</p>
      <p>
        <button type="button" onClick={printIt}>
          {print}
        </button>
      </p>
      <iframe ref={frame} title={title} sandbox="allow-same-origin allow-modals" srcDoc={html} />
    </div>
  );
}
