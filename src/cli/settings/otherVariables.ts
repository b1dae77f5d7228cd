// Variables of ours that are not settings of `serve`. Used to tell a misspelt one from a known one.

export const OTHER_VARIABLES: readonly string[] = ['OVENWARD_DEBUG', 'OVENWARD_URL'];
