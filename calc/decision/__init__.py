"""Which way is open for this ceiling: questions, rules as rows, and the verdict. No rule is written as code."""
