// Runs in the page: the contrast of every text that is seen, by WCAG 2.2's own formulas (relative
// luminance and contrast ratio), and what 1.4.3 asks of it.
export function contrasts() {
  const parse = (colour) => {
    const [r, g, b, a = 1] = colour.match(/[\d.]+/g).map(Number);
    return { rgb: [r, g, b], a };
  };
  const over = (front, back) => front.rgb.map((c, i) => c * front.a + back[i] * (1 - front.a));
  const luminance = (rgb) => {
    const [r, g, b] = rgb.map((c) => {
      const share = c / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = (element) => {
    let rgb = null;
    const layers = [];
    for (let at = element; at; at = at.parentElement) {
      const colour = parse(getComputedStyle(at).backgroundColor);
      if (colour.a > 0) layers.push(colour);
      if (colour.a === 1) break;
    }
    rgb = [255, 255, 255];
    for (const layer of layers.reverse()) rgb = over(layer, rgb);
    return rgb;
  };
  const found = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const text = walker.currentNode.textContent.trim();
    const element = walker.currentNode.parentElement;
    if (!text || !element.checkVisibility()) continue;
    const style = getComputedStyle(element);
    const inDrawing = element instanceof SVGElement;
    const colour = parse(inDrawing ? style.fill : style.color);
    for (let at = element; at; at = at.parentElement) colour.a *= Number(getComputedStyle(at).opacity);
    const back = ground(element);
    const [light, dark] = [luminance(over(colour, back)), luminance(back)].sort((a, b) => b - a);
    const size = parseFloat(style.fontSize);
    const large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
    found.push({ text, ratio: (light + 0.05) / (dark + 0.05), needed: large ? 3 : 4.5 });
  }
  return found;
}
