import type { PaperDrawing, PaperMark } from '#shared/contract/paper.ts';

/** A drawing of the paper, as the desk made it, mark by mark. */
export function Drawing({ drawing }: { readonly drawing: PaperDrawing }) {
  const { name, width, height, marks } = drawing;
  return (
    <svg className="drawing" role="img" aria-label={name} width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
      {marks.map((mark, at) => (
        // The marks of a drawing keep their order and nothing of their own.
        <Mark key={at} mark={mark} />
      ))}
    </svg>
  );
}

function Mark({ mark }: { readonly mark: PaperMark }) {
  switch (mark.tag) {
    case 'path':
      return <path className={mark.look} d={mark.d} />;
    case 'circle':
      return <circle className={mark.look} cx={mark.cx} cy={mark.cy} r={mark.r} />;
    case 'text':
      return (
        <text className={mark.look} x={mark.x} y={mark.y} textAnchor={mark.anchor}>
          {mark.text}
        </text>
      );
  }
}
