#include "reports/pages/page_style.h"

#include "reports/canvas/scaled.h"

namespace lowledger::pages {

canvas::Size layout_size(const PageStyle& style) {
    const canvas::Size paper = canvas::size_of(style.paper);
    if (!style.large_print) return paper;
    return {(1.0 / large_print_scale) * paper.width, (1.0 / large_print_scale) * paper.height};
}

canvas::Document printed(canvas::Document laid_out, const PageStyle& style) {
    if (!style.large_print) return laid_out;
    for (canvas::Page& page : laid_out.pages)
        page = canvas::scaled(page, large_print_scale);
    return laid_out;
}

}  // namespace lowledger::pages
