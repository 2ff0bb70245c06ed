/**
 * Drawn under the lines of a chart: gaps as hatched stretches with a square, flagged stretches as a
 * bar with a triangle, one row a point. The shape says it; the colour repeats it.
 */

const ROW = 16;
const SHAPE = 9;

/** A uPlot draw hook. lines: [{gaps, flagged}]; inks: {look, act, hatch}; ratio: device pixels. */
export function drawMarks(chart, lines, inks) {
  const context = chart.ctx;
  const ratio = devicePixelRatio || 1;
  const { left, top, width, height } = chart.bbox;
  context.save();
  context.beginPath();
  context.rect(left, top, width, height);
  context.clip();
  lines.forEach((line, index) => {
    const y = top + height - (index + 0.5) * ROW * ratio;
    for (const gap of line.gaps) {
      const box = stretch(chart, gap, left, width);
      hatch(context, box, y - (ROW / 2 - 2) * ratio, (ROW - 4) * ratio, inks.hatch, ratio);
      square(context, box.middle, y, SHAPE * ratio, inks.act);
    }
    for (const flag of line.flagged) {
      const box = stretch(chart, flag, left, width);
      context.fillStyle = inks.look;
      context.fillRect(box.from, y + 3 * ratio, box.to - box.from, 2 * ratio);
      triangle(context, box.middle, y, SHAPE * ratio, inks.look);
    }
  });
  context.restore();
}

function stretch(chart, { from, to }, left, width) {
  const a = Math.max(chart.valToPos(from, "x", true), left);
  const b = Math.min(chart.valToPos(to, "x", true), left + width);
  const end = Math.max(b, a + 1);
  return { from: a, to: end, middle: (a + end) / 2 };
}

function hatch(context, { from, to }, y, height, ink, ratio) {
  context.save();
  context.beginPath();
  context.rect(from, y, to - from, height);
  context.clip();
  context.strokeStyle = ink;
  context.lineWidth = ratio;
  context.beginPath();
  for (let x = from - height; x < to; x += 5 * ratio) {
    context.moveTo(x, y + height);
    context.lineTo(x + height, y);
  }
  context.stroke();
  context.restore();
}

function square(context, x, y, size, ink) {
  context.fillStyle = ink;
  context.fillRect(x - size / 2, y - size / 2, size, size);
}

function triangle(context, x, y, size, ink) {
  context.fillStyle = ink;
  context.beginPath();
  context.moveTo(x, y - size / 2);
  context.lineTo(x + size / 2 + 1, y + size / 2);
  context.lineTo(x - size / 2 - 1, y + size / 2);
  context.fill();
}
