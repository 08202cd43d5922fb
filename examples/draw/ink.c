/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "ink.h"
#ifdef WITH_PICTURES
#include "picture.h"
#endif

static const char *const names[INKS] = {"pdf", "svg", "png"};

ink ink_named(const char *name)
{
    ink which = (ink)0;
    while (which < INKS && strcmp(name, names[which]))
        which++;
    return which;
}

const char *ink_name(ink which)
{
    return names[which];
}

int ink_holds_all(ink which)
{
    return which == INK_PDF;
}

int ink_is_there(ink which)
{
#ifdef WITH_PICTURES
    return which < INKS;
#else
    return which == INK_SVG;
#endif
}

int ink_sheets(text *out, ink which, const sheets *made, size_t place, double dpi)
{
#ifdef WITH_PICTURES
    if (which == INK_PDF)
        return picture_pdf(out, made);
    if (which == INK_PNG)
        return picture_png(out, made, place, dpi);
#endif
    (void)which, (void)dpi;
    sheet_document(out, made, place);
    return 1;
}
