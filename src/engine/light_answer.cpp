#include "rillwatt/exchange/light_json.hpp"
#include "rillwatt/plan/assess_site.hpp"
#include "rillwatt/text/light_text.hpp"

#include "answers.hpp"
#include "point_arguments.hpp"

namespace rillwatt {

Answer light_answer(const Request& request, FileSource& files) {
    const LoadResult<LoadedSite> loaded = load_site(site_files(request), files);
    if (!loaded) return refused(request, loaded.errors);
    LoadResult<std::vector<SpacePoint>> points =
        points_of(request.arguments, loaded.value->site->settings.units);
    LoadResult<Assessment> assessed =
        assess_with_light(*loaded.value, files, points.value.value_or(std::vector<SpacePoint>()));
    points.errors.insert(points.errors.end(), assessed.errors.begin(), assessed.errors.end());
    if (!points.errors.empty()) return refused(request, points.errors);
    const Assessment& assessment = *assessed.value;
    return {.status = status_of(light_findings(assessment.findings)),
            .out =
                wants_json(request) ? light_json(assessment) : light_text(assessment, text_style(request))};
}

} // namespace rillwatt
