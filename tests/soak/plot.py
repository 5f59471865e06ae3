"""Curves over the cases that were played: as SVG, and as a line of blocks each in the output."""
BLOCKS = "▁▂▃▄▅▆▇█"
COLOURS = ["#1b5e8c", "#b3541e", "#3d7a3d", "#7a3d73", "#555555", "#a08000"]


def line_of_blocks(values, width=60):
    """The greatest of each stretch, from 0 at the bottom."""
    top = max(values) or 1
    cells = [max(values[i * len(values) // width:max((i + 1) * len(values) // width, i * len(values) // width + 1)]) for i in range(min(width, len(values)))]
    return "".join(BLOCKS[min(7, int(7.99 * v / top))] for v in cells)


def text(panels):
    for title, unit, _, curves in panels:
        print(f"{title}, {unit}")
        for name, values in curves.items():
            print(f"  {name:18} {line_of_blocks(values)}  {values[0]:.4g} … {values[-1]:.4g}, at most {max(values):.4g}")


def svg(path, title, panels):
    """`panels`: (title, unit, [cases], {name: [value]})."""
    width, height, left, top = 880, 210, 70, 50
    out = [f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{top + height * len(panels)}" font-family="DejaVu Sans, sans-serif" font-size="12">',
           '<rect width="100%" height="100%" fill="white"/>', f'<text x="{left}" y="26" font-size="16">{title}</text>']
    for p, (name, unit, cases, curves) in enumerate(panels):
        y0, h, w = top + p * height, height - 62, width - left - 190
        most = max(max(v) for v in curves.values()) * 1.08 or 1
        out.append(f'<text x="{left}" y="{y0 + 12}" font-weight="bold">{name}, {unit}</text>')
        for part in (0, 0.5, 1):
            y = y0 + 20 + h * (1 - part)
            out.append(f'<path d="M{left} {y:.1f}h{w}" stroke="#ddd"/><text x="{left - 6}" y="{y + 4:.1f}" text-anchor="end">{most * part:.4g}</text>')
        for part in (0, 0.25, 0.5, 0.75, 1):
            out.append(f'<text x="{left + w * part:.1f}" y="{y0 + h + 36}" text-anchor="middle">{int(cases[-1] * part)}</text>')
        for i, (curve, values) in enumerate(curves.items()):
            at = [f"{left + w * c / cases[-1]:.1f},{y0 + 20 + h * (1 - v / most):.1f}" for c, v in zip(cases, values)]
            colour = COLOURS[i % len(COLOURS)]
            out.append(f'<polyline points="{" ".join(at)}" fill="none" stroke="{colour}" stroke-width="1.6"/>'
                       f'<text x="{left + w + 12}" y="{y0 + 32 + 17 * i}" fill="{colour}">{curve}: {values[-1]:.4g}</text>')
    out.append("</svg>")
    with open(path, "w", encoding="utf-8") as f:
        f.write("\n".join(out))
