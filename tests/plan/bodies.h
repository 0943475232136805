/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Small bodies for tests. They are written with single quotes, which stand for double ones, so that
 * a row of a table can put one part of them in the place of another. */

#include <string.h>

#include "plan/body-file.h"
#include "plan/json-file.h"

/* Open as hired: hd and uhd in intra and long to 60; with licences: more rate, raw, a wide size.
 * The licence `all` replaces every other. */
#define DIGITAL_BODY                                                                               \
  "{'format':'drawl-body','version':1,'id':'tern','name':'Tern 4','maker':'Kittiwake',"            \
  "'what':'A body for tests','kind':'digital',"                                                    \
  "'source':{'document':'Tern 4 data sheet','date':'2026-05-04'},"                                 \
  "'currency':'EUR','price_day':'180.00',"                                                         \
  "'rates':{'step':1,'also':['24000/1001',29.97,'60000/1001']},"                                   \
  "'sizes':["                                                                                      \
  "{'id':'uhd','name':'3840 × 2160','width':3840,'height':2160,'window_width_mm':'26.4',"         \
  "'window_height_mm':14.85,'readout_ms':7.5},"                                                    \
  "{'id':'hd','name':'1920 × 1080','width':1920,'height':1080},"                                  \
  "{'id':'wide','name':'4096 × 2160','width':4096,'height':2160}],"                               \
  "'codecs':["                                                                                     \
  "{'id':'intra','name':'Intra','payload':{'kind':'scaling','mbps':600,'at':60}},"                 \
  "{'id':'long','name':'Long','payload':{'kind':'constant','mbps':'100'},"                         \
  "'level':'h265-5.1'},"                                                                           \
  "{'id':'raw','name':'Raw 12-bit','payload':{'kind':'uncompressed','sampling':'mosaic',"          \
  "'stored_bits':12}},"                                                                            \
  "{'id':'vc3','name':'VC-3','law':'vc3-1237'}],"                                                  \
  "'licences':["                                                                                   \
  "{'id':'rate','name':'Rate upgrade','what':'To 240 fps','price_day':'60.00'},"                   \
  "{'id':'raw','name':'Raw upgrade','price_day':45,'requires':['rate']},"                          \
  "{'id':'wide','name':'Wide upgrade','price_day':'30.00'},"                                       \
  "{'id':'all','name':'Everything','price_day':'120.00','replaces':['rate','raw','wide']}],"       \
  "'cards':["                                                                                      \
  "{'id':'v60','name':'V60 128 GB','bytes':128000000000,'class':'V60','price_day':'8.00'},"        \
  "{'id':'v90','name':'V90 64 GB','bytes':64000000000,'class':'V90'},"                             \
  "{'id':'mag','name':'Carrier 1 TB','bytes':1000000000000,'write_mb_s':800}],"                    \
  "'limits':["                                                                                     \
  "{'sizes':['uhd','hd'],'codecs':['intra','long'],'lowest_rate':1,'highest_rate':60},"            \
  "{'sizes':'uhd','codecs':'intra','lowest_rate':1,'highest_rate':120,'licences':['rate']},"       \
  "{'sizes':'hd','codecs':'intra','lowest_rate':1,'highest_rate':240,'licences':['rate'],"         \
  "'card_classes':['V90','VPG-400']},"                                                             \
  "{'sizes':['uhd','hd'],'codecs':'raw','lowest_rate':8,'highest_rate':60,'licences':['raw']},"    \
  "{'sizes':'wide','codecs':'long','lowest_rate':1,'highest_rate':30,'licences':['wide']},"        \
  "{'sizes':'wide','codecs':'raw','lowest_rate':8,'highest_rate':30,'licences':['wide','raw']},"   \
  "{'sizes':'hd','codecs':'vc3','lowest_rate':1,'highest_rate':60}],"                              \
  "'audio_tracks':2,'power':{'watts':32.5},"                                                       \
  "'fit':[{'what':'Lens mount','why':'It ships without'}],"                                        \
  "'pick_up':[{'what':'Dead pixels'}],'return':[{'what':'Cards wiped'}],"                          \
  "'own_key':{'kept':true}}"

#define BUFFER_BODY                                                                                \
  "{'format':'drawl-body','version':1,'id':'swift','name':'Swift 2','kind':'digital',"             \
  "'rates':{'step':10},"                                                                           \
  "'sizes':[{'id':'hd','name':'1920 × 1080','width':1920,'height':1080},"                         \
  "{'id':'sd','name':'1280 × 720','width':1280,'height':720}],"                                   \
  "'codecs':[{'id':'raw','name':'Raw 12-bit','payload':{'kind':'uncompressed',"                    \
  "'sampling':'mosaic','stored_bits':12}}],"                                                       \
  "'licences':[{'id':'fast','name':'Speed upgrade','price_day':'200.00'}],"                        \
  "'cards':[{'id':'ssd','name':'Drive 500 GB','bytes':500000000000,'write_mb_s':300}],"            \
  "'buffer':{'bytes':16000000000,'pre_percent':50,'write_mb_s':300},"                              \
  "'limits':[{'sizes':'hd','codecs':'raw','lowest_rate':10,'highest_rate':1000},"                  \
  "{'sizes':'hd','codecs':'raw','lowest_rate':10,'highest_rate':2000,'licences':['fast']},"        \
  "{'sizes':'sd','codecs':'raw','lowest_rate':10,'highest_rate':2000},"                            \
  "{'sizes':'sd','codecs':'raw','lowest_rate':10,'highest_rate':4000,'licences':['fast']}]}"

#define FILM_BODY                                                                                  \
  "{'format':'drawl-body','version':1,'id':'puffin','name':'Puffin 16','kind':'film',"             \
  "'sizes':[{'id':'s16','name':'Super 16','gauge':'16','window_width_mm':'12.52',"                 \
  "'window_height_mm':'7.41'},"                                                                    \
  "{'id':'n16','name':'Regular 16','gauge':'16','window_width_mm':'10.26',"                        \
  "'window_height_mm':'7.49'}],"                                                                   \
  "'licences':[{'id':'hs','name':'High-speed movement','price_day':'70.00'}],"                     \
  "'magazines':[{'id':'m100','name':'100 ft','feet':100},{'id':'m400','name':'400 ft',"            \
  "'feet':400,'price_day':'25.00'}],"                                                              \
  "'limits':[{'sizes':['s16','n16'],'lowest_rate':1,'highest_rate':75},"                           \
  "{'sizes':'n16','lowest_rate':1,'highest_rate':150,'licences':['hs']}]}"

/* @text with double quotes. */
static inline char *
with_quotes (const char *text)
{
  return g_strdelimit (g_strdup (text), "'", '"');
}

/* The body of @text with the first @find replaced by @replace; either may be NULL. */
static inline DrawlBody *
make_body (const char *text, const char *find, const char *replace, GError **error)
{
  g_autoptr (GString) changed = g_string_new (text);

  if (find != NULL && g_string_replace (changed, find, replace, 1) != 1)
    g_error ("the body has no \"%s\"", find);
  g_autofree char *json = with_quotes (changed->str);
  g_autoptr (JsonObject) object = drawl_json_parse (json, strlen (json), "tern.json", error);
  return object == NULL ? NULL : drawl_body_from_json (object, "tern.json", error);
}

static inline DrawlBody *
sound_body (const char *text)
{
  g_autoptr (GError) error = NULL;
  DrawlBody *body = make_body (text, NULL, NULL, &error);

  g_assert_no_error (error);
  return body;
}

/* Whole frames that cover a take. */
static inline gint64
take_frames (DrawlRational take_s, DrawlRate rate)
{
  DrawlRational frames;

  g_assert_true (drawl_rational_mul (take_s, rate, &frames));
  return drawl_rational_ceil (frames);
}
