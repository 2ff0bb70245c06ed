/** Elements in few words. Text is always text, never markup. */

const SVG = "http://www.w3.org/2000/svg";

/** An element with attributes and children; null and false children are left out. */
export function h(tag, attributes = {}, ...children) {
  return fill(document.createElement(tag), attributes, children);
}

/** The same for a drawing. */
export function s(tag, attributes = {}, ...children) {
  return fill(document.createElementNS(SVG, tag), attributes, children);
}

/** Changes text only where it differs, so that screen readers and selections are left in peace. */
export function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

function fill(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) {
      element.setAttribute(name, value);
    }
  }
  element.append(...children.flat().filter((child) => child !== null && child !== false));
  return element;
}
