import { expect, test } from "vitest";
import { isSvg, problemOfSvg } from "@/lib/files/svg-safety";

const bytes = (text: string) => new TextEncoder().encode(text);
const NS = 'xmlns="http://www.w3.org/2000/svg"';
const MUCH = 200_000;

test.each([
  [`<svg ${NS}/>`, true],
  [`\uFEFF \n<?xml version="1.0"?><!-- a > b --><!DOCTYPE svg PUBLIC "a" "b">\n<svg:svg>`, true],
  ["<SVG >", true],
  ["<svgs>", false],
  ["<!-- <svg> -->", false],
  ["<!-- <svg>", false],
  ["x<svg>", false],
  ["", false],
])("%j is meant as SVG: %s", (text, isMeant) => expect(isSvg(bytes(text))).toBe(isMeant));

// An expression that tried every way to read the first of these took longer than the age of the world.
test.each(["<!---->", "<!-- -->\n", "<?xml?>", "<!DOCTYPE a>"])(
  "a thousand “%s” before nothing are no SVG",
  (part) => {
    expect(isSvg(bytes(`${part.repeat(1_000).slice(0, 4_000)}x`))).toBe(false);
  },
);

test.each([
  "<style",
  "<!--",
  "<![CDATA[",
  '<a"',
  "<a ",
  "a.",
  " href='#",
  " style=' ",
  " on",
  "&#x1",
  "\"'",
  "< ",
  "<g>",
  "<g id='a'>",
  "<use href='#a'/>",
  "url(#",
])("much of “%s” is refused at once", (part) => {
  const problem = problemOfSvg(bytes(`<svg ${NS} ${part.repeat(MUCH / part.length)}`));
  expect(problem).toMatch(/damaged|repeats|outside|styles|codes/);
});

test("a part that stands for parts is counted, whatever stands in comments and quotes", () => {
  const tenfold = (id: string, of: string) => `<g id="${id}">${`<use href="#${of}"/>`.repeat(10)}</g>`;
  const bomb = ["a", "b", "c", "d", "e"].map((id, at, all) => tenfold(id, all[at - 1] ?? "dot")).join("");
  const svg = (inside: string) => bytes(`<svg ${NS}><circle id="dot" r="1"/>${inside}<use href="#e"/></svg>`);
  expect(problemOfSvg(svg(bomb))).toMatch(/repeats/);
  expect(problemOfSvg(svg(`<!-- ${bomb} -->`))).toBeNull();
  expect(problemOfSvg(svg(`<text d='>'><![CDATA[${bomb}]]></text>`))).toBeNull();
  expect(problemOfSvg(svg('<g id="e"><use href=" #e "/></g>'))).toMatch(/repeats/);
});

test.each([
  ["<style>a{fill:u\\72l(x)}</style>", /escapes/],
  ["<style>a{}</style><g style='fill:\\75rl(x)'/>", /escapes/],
  ['<g style="fill:\\75rl(x)"/>', /escapes/],
])("%s is refused", (inside, problem) => {
  expect(problemOfSvg(bytes(`<svg ${NS}>${inside}</svg>`))).toMatch(problem);
});

test("a backslash that is in no style does no harm", () => {
  expect(problemOfSvg(bytes(`<svg ${NS}><desc>C:\\logo</desc><g style="fill:red"/></svg>`))).toBeNull();
});
