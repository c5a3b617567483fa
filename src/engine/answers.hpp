#pragma once

#include "rillwatt/engine/answer.hpp"
#include "rillwatt/finding/finding.hpp"
#include "rillwatt/finding/input_error.hpp"
#include "rillwatt/plan/load_site.hpp"
#include "rillwatt/text/text_style.hpp"

#include <string>
#include <vector>

namespace rillwatt {

// One function for each command, each in a file of its own.
Answer catalog_answer(const Request& request, FileSource& files);
Answer check_answer(const Request& request, FileSource& files);
Answer circuits_answer(const Request& request, FileSource& files);
Answer explain_answer(const Request& request, FileSource& files);
Answer headroom_answer(const Request& request, FileSource& files);
Answer light_answer(const Request& request, FileSource& files);
Answer place_answer(const Request& request, FileSource& files);
Answer plan_answer(const Request& request, FileSource& files);
Answer report_answer(const Request& request, FileSource& files);
Answer size_answer(const Request& request, FileSource& files);

/// Whether JSON is asked for.
bool wants_json(const Request& request);

/// How text is set.
TextStyle text_style(const Request& request);

/// The site file and the further catalogs that a request names.
SiteFiles site_files(const Request& request);

/// How a command ends that found this.
ExitStatus status_of(const std::vector<Finding>& findings);

/// The answer to wrong input: everything that is wrong, as words and where asked for as JSON.
Answer refused(const Request& request, const std::vector<InputError>& errors);

/// The same for what stands in no file: `words` follow "rillwatt: " or the like.
Answer refused(const Request& request, const std::string& who, const std::string& words);

} // namespace rillwatt
