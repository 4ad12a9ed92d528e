import sharp from "sharp";
import { expect, test } from "vitest";
import { cleanLogo } from "@/lib/files/clean-logo";

const SVG = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';
const bytes = (text: string) => new TextEncoder().encode(text);
const square = '<rect width="100" height="50" fill="#223344"/>';
const svg = (inner: string, attributes = 'viewBox="0 0 100 50"') =>
  bytes(`<svg ${SVG} ${attributes}>${inner}</svg>`);
const filled = (width: number, height: number, color = "#884422") =>
  sharp({ create: { width, height, channels: 3, background: color } });

const sizeOf = async (png: Uint8Array) => {
  const { format, width, height, exif } = await sharp(png).metadata();
  return { format, width, height, exif };
};

test.each(["png", "jpeg", "webp"] as const)("a %s becomes a PNG of its own size", async (format) => {
  const logo = await cleanLogo(await filled(640, 200).toFormat(format).toBuffer());
  expect(await sizeOf(logo)).toMatchObject({ format: "png", width: 640, height: 200 });
});

test("a large logo is fitted into 1200 × 600 and keeps its shape", async () => {
  const wide = await cleanLogo(await filled(3000, 1000).png().toBuffer());
  expect(await sizeOf(wide)).toMatchObject({ width: 1200, height: 400 });
  const tall = await cleanLogo(await filled(1000, 3000).png().toBuffer());
  expect(await sizeOf(tall)).toMatchObject({ width: 200, height: 600 });
});

test("a turned photo stands upright and its metadata is gone", async () => {
  const turned = await filled(400, 100)
    .withMetadata({ orientation: 6, exif: { IFD0: { Artist: "someone" } } })
    .jpeg()
    .toBuffer();
  expect(await sizeOf(await cleanLogo(turned))).toEqual({
    format: "png",
    width: 100,
    height: 400,
    exif: undefined,
  });
});

test("a small SVG is drawn at print size, a huge one is not drawn huge", async () => {
  expect(
    await sizeOf(await cleanLogo(svg(square, 'width="40" height="20" viewBox="0 0 100 50"'))),
  ).toMatchObject({
    format: "png",
    width: 1200,
    height: 600,
  });
  expect(
    await sizeOf(await cleanLogo(svg(square, 'width="6000" height="3000" viewBox="0 0 100 50"'))),
  ).toMatchObject({ width: 1200, height: 600 });
});

test("what a drawing program writes into a plain SVG is accepted", async () => {
  const tool = `<?xml version="1.0" encoding="UTF-8" standalone="no"?><!-- made by a tool -->
<svg ${SVG} viewBox="0 0 100 50"><title>A &#233; &amp; b</title><defs><linearGradient id="g"><stop offset="0"
stop-color="#123"/></linearGradient><g id="m">${square}</g></defs><style>.a{fill:url(#g)}</style>
<use xlink:href="#m"/><rect class="a" width="9" height="9" fill="url('#g')"/></svg>`;
  expect(await sizeOf(await cleanLogo(bytes(tool)))).toMatchObject({ format: "png" });
});

test.each([
  ["an entity", bytes(`<!DOCTYPE svg [<!ENTITY x "y">]><svg ${SVG} viewBox="0 0 9 9">${square}&x;</svg>`)],
  [
    "an outside document type",
    bytes(`<!DOCTYPE svg SYSTEM "http://a.example/x.dtd"><svg ${SVG}>${square}</svg>`),
  ],
  ["a script", svg(`${square}<script>1</script>`)],
  ["a script under another prefix", svg(`${square}<s:script xmlns:s="http://www.w3.org/2000/svg"/>`)],
  ["an event handler", svg('<rect width="9" height="9" onload="x()"/>')],
  ["embedded HTML", svg(`${square}<foreignObject><p/></foreignObject>`)],
  ["a picture from the network", svg(`${square}<image href="https://a.example/p.png"/>`)],
  ["a file of the server", svg(`${square}<image xlink:href="file:///etc/hostname"/>`)],
  ["a relative file", svg(`${square}<use href="other.svg#a"/>`)],
  ["an SVG inside", svg(`${square}<image href="data:image/svg+xml;base64,PHN2Zy8+"/>`)],
  ["a letter spelled as a code", svg(`${square}<image href="&#104;ttps://a.example/p.png"/>`)],
  ["a hidden url", svg('<rect width="9" height="9" fill="u&#x72;l(https://a.example/p)"/>')],
  ["a style import", svg(`<style>@import "https://a.example/s.css";</style>${square}`)],
  ["an escaped style import", svg(`<style>@\\69mport "https://a.example/s.css";</style>${square}`)],
  ["a style url", svg(`<rect width="9" height="9" style="fill:url(https://a.example/p)"/>`)],
  ["a stylesheet instruction", bytes(`<?xml-stylesheet href="a.css"?><svg ${SVG}>${square}</svg>`)],
  ["an animation", svg(`<rect width="9" height="9"><animate attributeName="x" to="9"/></rect>`)],
  ["an include", svg(`${square}<xi:include xmlns:xi="http://www.w3.org/2001/XInclude" parse="text"/>`)],
  ["another encoding", bytes(`<?xml version="1.0" encoding="UTF-7"?><svg ${SVG}>${square}</svg>`)],
  ["broken XML", bytes(`<svg ${SVG} viewBox="0 0 9 9"><rect`)],
])("refuses an SVG with %s", async (_what, hostile) => {
  await expect(cleanLogo(hostile)).rejects.toMatchObject({
    code: "UNSUPPORTED_FILE",
    fields: [{ field: "logo", message: expect.stringContaining("Send") }],
  });
});

test.each([
  ["a PDF", bytes("%PDF-1.7\n")],
  ["a text", bytes("hello")],
  ["nothing", new Uint8Array()],
  ["a cut-off PNG", null],
  ["a GIF", bytes("GIF89a\x01\x00\x01\x00")],
])("refuses %s", async (_what, given) => {
  const file = given ?? (await filled(300, 100).png().toBuffer()).subarray(0, 60);
  await expect(cleanLogo(file)).rejects.toMatchObject({
    code: "UNSUPPORTED_FILE",
    fields: [{ field: "logo" }],
  });
});

test("refuses more than 2 MB, more pixels than a poster, a dot, and white on white", async () => {
  await expect(cleanLogo(new Uint8Array(2 * 1024 * 1024 + 1))).rejects.toMatchObject({ code: "TOO_LARGE" });
  const bomb = await filled(7000, 7000).png({ compressionLevel: 9 }).toBuffer();
  expect(bomb.byteLength).toBeLessThan(2 * 1024 * 1024);
  await expect(cleanLogo(bomb)).rejects.toMatchObject({
    message: expect.stringContaining("too many pixels"),
  });
  await expect(cleanLogo(await filled(8, 8).png().toBuffer())).rejects.toThrow("too small");
  await expect(cleanLogo(await filled(300, 100, "#ffffff").png().toBuffer())).rejects.toThrow(
    "light backgrounds",
  );
  await expect(cleanLogo(svg('<rect width="100" height="50" fill="white"/>'))).rejects.toThrow("white");
});

test("a picture of 30 MB is refused by its size before it is opened, naming the field", async () => {
  const picture = await sharp(Buffer.alloc(3_200 * 3_200 * 3, 120), {
    raw: { width: 3_200, height: 3_200, channels: 3 },
  })
    .png({ compressionLevel: 0 })
    .toBuffer();
  expect(picture.byteLength).toBeGreaterThan(30_000_000);
  const begun = performance.now();
  await expect(cleanLogo(picture)).rejects.toMatchObject({
    code: "TOO_LARGE",
    fields: [{ field: "logo", message: expect.stringContaining("at most 2 MB") }],
  });
  expect(performance.now() - begun).toBeLessThan(100);
});

test("an SVG of entities that unfold into billions, and one with sides of a million, are refused or drawn small", async () => {
  const entities = Array.from({ length: 12 }, (_, n) => `<!ENTITY e${n + 1} "${`&e${n};`.repeat(10)}">`).join(
    "",
  );
  const laughs = bytes(
    `<!DOCTYPE svg [<!ENTITY e0 "ha">${entities}]><svg ${SVG} viewBox="0 0 9 9">${square}<text>&e12;</text></svg>`,
  );
  await expect(cleanLogo(laughs)).rejects.toMatchObject({
    code: "UNSUPPORTED_FILE",
    fields: [{ field: "logo" }],
  });
  const wide = bytes(`<svg ${SVG} width="1000000" height="1000000" viewBox="0 0 9 9">${square}</svg>`);
  await cleanLogo(wide).then(
    async (png) => expect((await sizeOf(png)).width).toBeLessThanOrEqual(1_200),
    (error) => expect(error).toMatchObject({ fields: [{ field: "logo" }] }),
  );
}, 15_000);

test("a picture that multiplies itself without end is refused in time", async () => {
  const levels = Array.from(
    { length: 24 },
    (_, n) => `<g id="l${n + 1}">${`<use href="#l${n}"/>`.repeat(10)}</g>`,
  ).join("");
  const bomb = svg(`<defs><rect id="l0" width="9" height="9"/>${levels}</defs><use href="#l24"/>`);
  const begun = performance.now();
  await expect(cleanLogo(bomb)).rejects.toMatchObject({
    fields: [{ field: "logo", message: expect.stringContaining("repeats its parts too often") }],
  });
  // Before it is drawn.
  expect(performance.now() - begun).toBeLessThan(1_000);
  const itself = svg(`<g id="a">${square}<use href="#b"/></g><g id="b"><use href="#a"/></g>`);
  await expect(cleanLogo(itself)).rejects.toThrow("within themselves");
  const dots = svg(
    `<defs>${square.replace("<rect", '<rect id="dot"')}</defs>${'<use href="#dot"/>'.repeat(300)}${square}`,
  );
  expect(await sizeOf(await cleanLogo(dots))).toMatchObject({ format: "png" });
}, 15_000);
