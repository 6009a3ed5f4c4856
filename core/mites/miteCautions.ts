/** Said once, where a treatment is chosen. Law: EPA advisory on substances used against varroa (read); acids: labels (from memory). */
export const treatmentCautions: readonly string[] = [
  'The label is the law: use only registered products, only as the label says. Dose, temperature and waiting time stand there, and your place may be stricter. This page names no dose.',
  'Oxalic and formic acid burn skin, eyes and lungs: gloves, goggles and the respirator that the label asks for. Keep them away from children and food.',
];
