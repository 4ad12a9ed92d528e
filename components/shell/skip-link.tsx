/** The first thing a keyboard meets: straight to the page's own content, `#content`. */
export function SkipLink() {
  return (
    <a
      href="#content"
      className="button button-primary absolute top-2 left-2 z-50 -translate-y-24 focus:translate-y-0"
    >
      Skip to content
    </a>
  );
}
