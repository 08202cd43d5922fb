/* SPDX-License-Identifier: MIT */
#include <cairo-pdf.h>
#include <librsvg/rsvg.h>
#include <tunnelside/version.h>

#include "message.h"
#include "picture.h"

#define POINT (25.4 / 72) /* mm */

static cairo_status_t add_bytes(void *out, const unsigned char *bytes, unsigned int count)
{
    text_add_bytes(out, (const char *)bytes, count);
    return CAIRO_STATUS_SUCCESS;
}

static int fail(const char *why)
{
    say("the sheet cannot be drawn: %s", why);
    return 0;
}

/* Draws a sheet in so many units by so many. */
static int draw(cairo_t *on, const sheets *made, size_t place, double width, double height)
{
    text svg = {NULL, 0, 0};
    GError *error = NULL;
    RsvgHandle *handle;
    const RsvgRectangle whole = {0, 0, width, height};
    int good;
    sheet_document(&svg, made, place);
    handle = rsvg_handle_new_from_data((const guint8 *)svg.data, svg.length, &error);
    if (handle)
        rsvg_handle_set_dpi(handle, 96); /* as CSS has it, and so sheet_drawing() */
    good = handle && rsvg_handle_render_document(handle, on, &whole, &error);
    if (!good)
        fail(error ? error->message : "for no reason told");
    g_clear_error(&error);
    if (handle)
        g_object_unref(handle);
    text_free(&svg);
    return good;
}

/* The same sheets give the same bytes: no time stands in them. */
static void describe(cairo_surface_t *pdf, const sheets *made)
{
    cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_CREATE_DATE, NULL);
    cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_CREATOR, "tunnelside-draw " TSIDE_VERSION);
    cairo_pdf_surface_set_metadata(pdf, CAIRO_PDF_METADATA_TITLE, made->all[0].title);
}

int picture_pdf(text *out, const sheets *made)
{
    cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream(add_bytes, out, 1, 1);
    cairo_t *on = cairo_create(pdf);
    int good = 1;
    describe(pdf, made);
    for (size_t i = 0; good && i < made->count; i++) {
        const double width = made->all[i].width / POINT, height = made->all[i].height / POINT;
        cairo_pdf_surface_set_size(pdf, width, height);
        good = draw(on, made, i, width, height);
        cairo_show_page(on);
    }
    cairo_surface_finish(pdf);
    if (good && (cairo_status(on) || cairo_surface_status(pdf)))
        good = fail(cairo_status_to_string(cairo_status(on) ? cairo_status(on) : cairo_surface_status(pdf)));
    cairo_destroy(on);
    cairo_surface_destroy(pdf);
    return good;
}

int picture_png(text *out, const sheets *made, size_t place, double dpi)
{
    const sheet *one = made->all + place;
    const int width = (int)(one->width / 25.4 * dpi + 0.5), height = (int)(one->height / 25.4 * dpi + 0.5);
    cairo_surface_t *png = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
    cairo_t *on = cairo_create(png);
    int good = draw(on, made, place, width, height);
    if (good && cairo_status(on))
        good = fail(cairo_status_to_string(cairo_status(on)));
    if (good) {
        const cairo_status_t status = cairo_surface_write_to_png_stream(png, add_bytes, out);
        good = status ? fail(cairo_status_to_string(status)) : 1;
    }
    cairo_destroy(on);
    cairo_surface_destroy(png);
    return good;
}
