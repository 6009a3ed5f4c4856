/** What is asked about an item that reads almost like another. */
export const itemQuestionWords = {
  use: (item: string) => `It is ${item}`,
  make: (item: string) => `Make “${item}” a new item`,
} as const;
