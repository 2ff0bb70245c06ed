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

/** Each line's name where it ends, moved apart where two would cover each other. */
export function drawNames(chart, lines, inks, warmth) {
  if (lines.length < 2 && !warmth) return;
  const context = chart.ctx;
  const ratio = devicePixelRatio || 1;
  const { left, width, top } = chart.bbox;
  context.save();
  context.font = `600 ${14 * ratio}px ${inks.sans}`;
  context.textAlign = "right";
  context.lineJoin = "round";
  const seen = lines.filter((line) => line.plotted > 0);
  const names = seen.map((line) => nameOf(chart, line, "mS", line.max, line.title, ratio));
  if (warmth) {
    names.push(
      ...seen.map((line) => nameOf(chart, line, "C", line.warmth, `${line.title} °C`, ratio)),
    );
  }
  names.sort((a, b) => a.y - b.y);
  let free = top - ROW * ratio;
  for (const name of names) {
    const y = Math.max(name.y, free);
    const x = Math.min(name.x, left + width - 4 * ratio);
    context.strokeStyle = inks.paper;
    context.lineWidth = 5 * ratio;
    context.strokeText(name.title, x, y);
    context.fillStyle = inks.series[name.ink];
    context.fillText(name.title, x, y);
    free = y + 18 * ratio;
  }
  context.restore();
}

function nameOf(chart, line, scale, values, title, ratio) {
  const last = values.findLastIndex((value) => value !== null);
  return {
    title: last < 0 ? "" : title,
    ink: line.ink,
    x: chart.valToPos(line.times[Math.max(last, 0)], "x", true),
    y: chart.valToPos(values[last] ?? 0, scale, true) - 8 * ratio,
  };
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
