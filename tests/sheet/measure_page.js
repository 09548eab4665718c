// Measures the pages in all frames once they are loaded, and leaves the findings in the document.
const inside = (box, outer) => box.left >= outer.left - 1 && box.right <= outer.right + 1 &&
                               box.top >= outer.top - 1 && box.bottom <= outer.bottom + 1;
const cover = (a, b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

// The box of the letters themselves: capitals 0.73 em up, descenders 0.22 em down.
function letters(text) {
  const em = parseFloat(text.getAttribute('font-size'));
  const width = text.getBBox(), base = parseFloat(text.getAttribute('y')) + 0.365 * em;
  const matrix = text.getScreenCTM();
  const corners = [];
  for (const x of [width.x, width.x + width.width])
    for (const y of [base - 0.73 * em, base + 0.22 * em])
      corners.push(new DOMPoint(x, y).matrixTransform(matrix));
  return {left: Math.min(...corners.map(p => p.x)), right: Math.max(...corners.map(p => p.x)),
          top: Math.min(...corners.map(p => p.y)), bottom: Math.max(...corners.map(p => p.y))};
}

function picture(svg, found) {
  const frame = svg.getBoundingClientRect();
  if (frame.width === 0) return;
  const texts = [...svg.querySelectorAll('text')].map(t => ({words: t.textContent, box: letters(t)}));
  found.texts += texts.length;
  texts.forEach((a, i) => {
    if (!inside(a.box, frame)) found.outside.push(a.words);
    texts.slice(i + 1).forEach(b => {
      if (cover(a.box, b.box)) found.overlaps.push([a.words, b.words]);
    });
  });
}

function page(frame) {
  const doc = frame.contentDocument, root = doc.documentElement;
  const found = {width: frame.clientWidth, scroll_width: root.scrollWidth, wide: [], overlaps: [],
                 outside: [], texts: 0, headings: doc.querySelectorAll('h1,h2').length};
  for (const element of doc.querySelectorAll('main, main *:not(svg *)')) {
    const box = element.getBoundingClientRect();
    if (box.width === 0) continue;
    if (box.right > frame.clientWidth + 0.5 || box.left < -0.5 ||
        (element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0))
      found.wide.push(element.tagName + ': ' + element.textContent.slice(0, 60));
  }
  doc.querySelectorAll('svg').forEach(svg => picture(svg, found));
  return found;
}

addEventListener('load', () => {
  const found = [...document.querySelectorAll('iframe')].map(page);
  document.body.textContent = 'FOUND' + JSON.stringify(found) + 'DNUOF';
});
