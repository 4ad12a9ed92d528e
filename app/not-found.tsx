/** Also the answer to another company's address: nothing here tells the two apart. */
export default function NotFound() {
  return (
    <main id="content" className="mx-auto grid max-w-lg gap-3 px-5 py-20">
      <h1 className="text-2xl">This page is not here</h1>
      <p className="text-muted">
        The address may be mistyped, the record may have been removed, or you may not be allowed to see it.
      </p>
      <div>
        <a href="/" className="button button-primary">
          Go to the start page
        </a>
      </div>
    </main>
  );
}
