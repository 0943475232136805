/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Calls of the program that change the disk, noted in their order. The linker puts noted-calls.c
 * before the system (-Wl,--wrap). */

#include <gio/gio.h>

typedef enum {
  NOTED_WRITE,
  NOTED_CUT,
  NOTED_SYNC,
  NOTED_SYNC_FOLDER,
  NOTED_CREATE, /* noted when the file is first written */
  NOTED_RENAME,
  NOTED_UNLINK,
} NotedKind;

typedef struct {
  NotedKind kind;
  char *path;
  char *to;      /* of RENAME */
  GBytes *bytes; /* of WRITE */
  gsize at;      /* of WRITE, and the length of CUT */
  /* What had been told before the call; for the caller to fill in. */
  int n, written, saving, saved;
} NotedCall;

/* Calls @on_call for each until the end, which gives them all. */
void noted_begin (void (*on_call) (NotedCall *call));
GPtrArray *noted_end (void);
